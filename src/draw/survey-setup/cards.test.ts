import { describe, expect, it } from 'vitest';
import type { Slide } from '../../core/body/slide.ts';
import { surveyCardNames } from '../../core/ledger/survey-card.ts';
import { nodesOf, type Shape, svgText } from '../shape.ts';
import { textWidth } from '../text.ts';
import { surveyCardDrawing } from './cards.ts';

const q = Math.SQRT1_2;
const pad = (name: string, y: number, normal: readonly [number, number, number]) => ({
  name,
  centre_mm: [0, y, 0] as const,
  normal,
  length_mm: 480,
  width_mm: 28,
  zones: 6,
  material: 'liner',
});
const slide: Slide = {
  name: 'saddle',
  free: 'x',
  pads: [pad('front flank', -10, [0, -q, q]), pad('rear flank', 10, [0, q, q]), pad('flat', 300, [0, 0, 1])],
};
const places = {
  minusEnd: 'headstock end',
  plusEnd: 'tailstock end',
  near: 'operator’s side',
  far: 'back of the machine',
};
const draw = (name: (typeof surveyCardNames)[number], width = 358): Shape =>
  surveyCardDrawing(name, { title: name, desc: 'words', width, places }, slide);
const number = (node: Shape, key: string): number => Number(node.attributes[key]);

/** Down the sheet is plus, as a shaft runs. */
function falls(root: Shape, part: string): number {
  const group = nodesOf(root).find((node) => node.attributes['data-part'] === part);
  const shaft = nodesOf(group!).find((node) => node.tag === 'line')!;
  return Math.sign(number(shaft, 'y2') - number(shaft, 'y1'));
}

describe.each(surveyCardNames)('%s', (name) => {
  it.each([326, 358, 560])(
    '%i px wide: named, told, letters of 14 px or more, none off the sheet',
    (width) => {
      const root = draw(name, width);
      expect(svgText(root)).not.toMatch(/NaN|undefined/);
      expect(nodesOf(root).find((node) => node.tag === 'title')!.children).toEqual([name]);
      const texts = nodesOf(root).filter((node) => node.tag === 'text');
      expect(texts.length).toBeGreaterThan(1);
      for (const one of texts) {
        const size = number(one, 'font-size');
        expect(size).toBeGreaterThanOrEqual(14);
        const wide = textWidth(String(one.children[0]), size);
        const anchor = one.attributes['text-anchor'];
        const from = number(one, 'x') - (anchor === 'middle' ? wide / 2 : anchor === 'end' ? wide : 0);
        expect(from, String(one.children[0])).toBeGreaterThanOrEqual(-2);
        expect(from + wide, String(one.children[0])).toBeLessThanOrEqual(width + 2);
        expect(number(one, 'y')).toBeLessThanOrEqual(number(root, 'height'));
      }
    },
  );
});

describe('signs', () => {
  it('a plunger that points up goes in downwards, one that points down upwards', () => {
    expect(falls(draw('under a straightedge'), 'in is plus')).toBe(1);
    expect(falls(draw('way to way'), 'in is plus')).toBe(-1);
  });
  it('a straightedge turned over is read from its other side, where out is plus', () => {
    const root = draw('straightedge turned, up and down');
    // I₁ = way + edge, I₂ = way − edge (kit/reversal.ts): the way must count the same in both, so out counts plus.
    expect(falls(root, 'out is plus')).toBe(1);
    expect(nodesOf(root).some((node) => node.attributes['data-part'] === 'in is plus')).toBe(false);
  });
  it.each(['level steps', 'mirror steps, up and down', 'level on a bridge'] as const)(
    '%s: the arrow stands up at the end that is high for plus',
    (name) => expect(falls(draw(name), 'plus')).toBe(-1),
  );
  it('a bridge is seen from the plus end, so plus stands at the far side, on the right', () => {
    const plus = nodesOf(draw('level on a bridge')).find((node) => node.attributes['data-part'] === 'plus')!;
    expect(number(nodesOf(plus).find((node) => node.tag === 'line')!, 'x1')).toBeGreaterThan(179);
  });
});
