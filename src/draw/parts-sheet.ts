import { drawing } from './drawing.ts';
import { type Shape, shape } from './shape.ts';

const gap = 28;

/** Figures under each other on one sheet, each as wide as it was drawn. */
export function partsSheet(title: string, figures: readonly Shape[]): Shape {
  const width = Math.max(...figures.map((figure) => Number(figure.attributes.width)));
  let y = 0;
  const placed = figures.map((figure) => {
    const here = y;
    y += Number(figure.attributes.height) + gap;
    return shape('svg', { ...figure.attributes, x: 0, y: here }, ...figure.children);
  });
  return drawing({ title, width, height: Math.max(0, y - gap) }, placed);
}
