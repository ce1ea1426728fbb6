import { describe, expect, it } from 'vitest';
import type { Slide } from '../../core/body/slide.ts';
import type { Vector } from '../../core/body/vector.ts';
import type { LevelSetup, PlaceWords, SweepSetup } from '../../core/ledger/setup.ts';
import { nodesOf, type Shape } from '../shape.ts';
import { setupDrawing, setupFigures } from './figures.ts';

const q = Math.SQRT1_2;
const slide: Slide = {
  name: 'saddle',
  free: 'x',
  pads: [
    {
      name: 'front flank',
      centre_mm: [0, -10, 0],
      normal: [0, -q, q],
      length_mm: 480,
      width_mm: 28,
      zones: 6,
      material: 'liner',
    },
    {
      name: 'rear flank',
      centre_mm: [0, 10, 0],
      normal: [0, q, q],
      length_mm: 480,
      width_mm: 28,
      zones: 6,
      material: 'liner',
    },
    {
      name: 'flat',
      centre_mm: [0, 300, 3],
      normal: [0, 0, 1],
      length_mm: 480,
      width_mm: 60,
      zones: 6,
      material: 'liner',
    },
  ],
};
const places: PlaceWords = {
  minus_end: 'headstock end',
  plus_end: 'tailstock end',
  minus_side: 'operator’s side',
  plus_side: 'back of the machine',
  travel: 'x',
};
const words = {
  id: 'a',
  name: 'a set-up',
  question: 'Is it square?',
  tells: ['facing'],
  rides_words: 'the cross slide.',
  touches_words: 'the square.',
  plus_words: 'plunger in.',
  climbs_words: 'concave',
  falls_words: 'convex',
};
const sweep = (drawing: string, plunger: Vector, from_mm: Vector, to_mm: Vector): SweepSetup => ({
  ...words,
  kind: 'sweep',
  drawing,
  rides: 'slide',
  touches: 'reference',
  plunger,
  from_mm,
  to_mm,
  points: 11,
  reading_sd_um: 1.5,
  face: 'square',
  face_slope_urad: 0,
  face_slope_sd_urad: 4,
});

const part = (root: Shape, name: string): Shape[] =>
  nodesOf(nodesOf(root).find((node) => node.attributes['data-part'] === name)!);
/** Direction of an arrow as drawn: along its shaft, which is a line that ends at its head. */
function pointing(root: Shape, name: string): [number, number] {
  const shaft = part(root, name).find((node) => node.tag === 'line')!.attributes;
  return [Math.sign(Number(shaft.x2) - Number(shaft.x1)), Math.sign(Number(shaft.y2) - Number(shaft.y1))];
}
const dial = (root: Shape): [number, number] => {
  const circle = part(root, 'indicator')
    .filter((node) => node.tag === 'circle')
    .at(-1)!.attributes;
  return [Number(circle.cx), Number(circle.cy)];
};
const face = (root: Shape): [number, number] => {
  const heavy = part(root, 'touched').find((node) => node.tag === 'line')!.attributes;
  return [(Number(heavy.x1) + Number(heavy.x2)) / 2, (Number(heavy.y1) + Number(heavy.y2)) / 2];
};
const draw = (setup: SweepSetup | LevelSetup, width = 358) => setupDrawing({ setup, slide, places, width });

describe.each(['square-cross-sweep', 'generic', 'a name no figure has'])('a sweep drawn as %s', (drawing) => {
  it('has the face where the plunger points, and "in is plus" the other way', () => {
    const toHeadstock = draw(sweep(drawing, [-1, 0, 0], [0, 20, 90], [0, 220, 90]));
    expect(face(toHeadstock)[0]).toBeLessThan(dial(toHeadstock)[0]);
    expect(pointing(toHeadstock, 'in is plus')).toEqual([1, 0]);
    const toTailstock = draw(sweep(drawing, [1, 0, 0], [0, 20, 90], [0, 220, 90]));
    expect(face(toTailstock)[0]).toBeGreaterThan(dial(toTailstock)[0]);
    expect(pointing(toTailstock, 'in is plus')).toEqual([-1, 0]);
  });
  it('travels the way the sweep runs: to the back is up the sheet', () => {
    expect(pointing(draw(sweep(drawing, [-1, 0, 0], [0, 20, 90], [0, 220, 90])), 'travel')).toEqual([0, -1]);
    expect(pointing(draw(sweep(drawing, [-1, 0, 0], [0, 220, 90], [0, 20, 90])), 'travel')).toEqual([0, 1]);
  });
});

describe('any other sweep', () => {
  it('is drawn in the view that shows its travel and its plunger', () => {
    const title = (plunger: Vector, from: Vector, to: Vector) =>
      String(
        nodesOf(draw(sweep('generic', plunger, from, to))).find((node) => node.tag === 'title')!.children[0],
      );
    expect(title([0, 1, 0], [-150, -40, 60], [150, -40, 60])).toContain('seen from above');
    expect(title([0, 0, -1], [-150, 40, 60], [150, 40, 60])).toContain('seen from the operator’s side');
    expect(title([0, 0, -1], [0, 40, 60], [0, 240, 60])).toContain('seen from the tailstock end');
  });
  it('down onto a face: in is plus points up', () => {
    const root = draw(sweep('generic', [0, 0, -1], [-150, 40, 160], [150, 40, 160]));
    expect(pointing(root, 'in is plus')).toEqual([0, -1]);
    expect(pointing(root, 'travel')).toEqual([1, 0]);
    expect(face(root)[1]).toBeGreaterThan(dial(root)[1]);
  });
});

describe('a level', () => {
  const level = (along: Vector): LevelSetup => ({
    ...words,
    kind: 'level',
    drawing: 'level-across',
    along,
    sd_urad: 5,
  });
  it('has its plus arrow at the end it points to', () => {
    const arrowX = (along: Vector): number => {
      const lines = nodesOf(draw(level(along))).filter(
        (node) => node.tag === 'line' && node.attributes['stroke-width'] === 3,
      );
      expect(lines).toHaveLength(1);
      return Number(lines[0]!.attributes.x1);
    };
    // Across: the back is at the right as seen from the tailstock end. Along: the headstock end is at the left.
    expect(arrowX([0, 1, 0])).toBeGreaterThan(179);
    expect(arrowX([0, -1, 0])).toBeLessThan(179);
    expect(arrowX([-1, 0, 0])).toBeLessThan(179);
    expect(arrowX([1, 0, 0])).toBeGreaterThan(179);
  });
});

it('a figure is named for every drawing the templates use', () => {
  expect(Object.keys(setupFigures).sort()).toEqual(
    ['generic', 'height-gauge', 'level-across', 'level-along', 'square-cross-sweep'].sort(),
  );
});
