import { sayLength } from '../../core/quantity/length.ts';
import { plateMap } from '../../draw/plate-map.ts';
import type { Shape } from '../../draw/shape.ts';
import type { PlateAnswer } from '../../shop/survey/plate.ts';
import { plateSentence } from '../../shop/survey/plate-sentence.ts';

/** The surface as a map of what must come off to be flat. */
export function plateFigure(answer: PlateAnswer): Shape {
  const { points, depth_um, stepped } = answer;
  const span = (values: readonly number[]) => {
    const low = values.reduce((least, value) => Math.min(least, value), Infinity);
    const high = values.reduce((most, value) => Math.max(most, value), -Infinity);
    return sayLength(high - low, 'metric').text;
  };
  return plateMap({
    title: answer.name ?? 'Flatness',
    desc: plateSentence(answer),
    width: 760,
    points: points.map(({ x_mm, y_mm }, i) => ({
      x: x_mm,
      y: y_mm,
      depth: stepped ? stepped.passes[i]! : depth_um[i]!,
      text: stepped ? String(stepped.passes[i]) : depth_um[i]!.toFixed(1),
    })),
    contacts: answer.contacts,
    key: stepped ? `passes of ${stepped.pass_um} µm to be flat` : 'to take off to be flat, µm',
    long: span(points.map((point) => point.x_mm)),
    broad: span(points.map((point) => point.y_mm)),
  });
}
