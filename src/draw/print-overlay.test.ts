import { describe, expect, it } from 'vitest';
import { type Overlaid, overPhoto, printOverlay } from './print-overlay.ts';
import { nodesOf, svgText } from './shape.ts';

const cell = { bearing_pct: 20, net_mm2: 625, unreadable_pct: 0, partial: false };
const seen: Overlaid = {
  photo: { width_px: 1200, height_px: 800 },
  // Ten pixels a mm, upright: a mm is where it is without any sums.
  corners: [
    { x: 100, y: 200 },
    { x: 700, y: 200 },
    { x: 700, y: 600 },
    { x: 100, y: 600 },
  ],
  size: { length_mm: 60, width_mm: 40 },
  cell_mm: 25,
  cells: [
    { ...cell, col: 0, row: 0, count: 17 },
    { ...cell, col: 1, row: 0, count: 12, unreadable_pct: 9 },
    { ...cell, col: 2, row: 1, count: 3, partial: true },
  ],
  spots: [{ x_mm: 10, y_mm: 20, area_mm2: Math.PI * 4, burnished: 0 }],
};
const of = (tag: string) => nodesOf(printOverlay(seen)).filter((node) => node.tag === tag);

describe('the drawing over a photo', () => {
  it('rules every square once, to the surface’s own ends', () => {
    const lines = of('line').map(({ attributes: a }) =>
      [a.x1, a.y1, a.x2, a.y2].map((v) => Math.round(Number(v))),
    );
    expect(lines.filter(([x1, , x2]) => x1 === x2).map(([x]) => x)).toEqual([100, 350, 600, 700]);
    expect(lines.filter(([, y1, , y2]) => y1 === y2).map(([, y]) => y)).toEqual([200, 450, 600]);
  });
  it('rings a spot where it lies, as large as it is', () => {
    const [ring] = of('circle');
    expect(ring!.attributes).toMatchObject({ cx: expect.closeTo(200, 6), cy: expect.closeTo(400, 6) });
    expect(ring!.attributes.r).toBeCloseTo(20, 6);
  });
  it('counts in the middle of squares: cut ones in brackets, unreadable ones a dash', () => {
    const texts = of('text').map((node) => [
      node.children[0],
      Math.round(Number(node.attributes.x)),
      Math.round(Number(node.attributes.y)),
    ]);
    expect(texts).toEqual([
      ['17', 225, 325],
      ['–', 475, 325],
      ['(3)', 650, 525],
    ]);
  });
  it('is as large as the photo, and takes the photo under it', () => {
    const text = svgText(overPhoto(printOverlay(seen), { base64: 'AAAA' }));
    expect(text).toContain('width="1200" height="800" viewBox="-0.5 -0.5 1200 800"');
    expect(text).toMatch(
      /<image x="-0.5" y="-0.5" width="1200" height="800" href="data:image\/jpeg;base64,AAAA"\/>.*<line/,
    );
  });
});
