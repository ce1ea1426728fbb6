import { expect, it } from 'vitest';
import { fullCover } from '../core/print/cover.ts';
import { applied, inverted } from '../core/print/homography.ts';
import type { PlacePx } from '../core/print/picture.ts';
import { foretoldPrint } from './print-overlay-foretold.ts';
import { inPhoto, onScreen, overlayView } from './print-overlay-view.ts';
import type { Shape } from './shape.ts';

const size = { length_mm: 240, width_mm: 60 };
const corners = [
  { x: 300, y: 200 },
  { x: 2300, y: 330 },
  { x: 2260, y: 860 },
  { x: 320, y: 720 },
] as const;
const view = overlayView({ corners, size, width: 700, most_height: 400 });

/** Closed lines of the drawing's last path, mm on the surface. */
function spotsOf(figure: Shape): PlacePx[][] {
  const paths: string[] = [];
  const walk = (one: Shape) => {
    if (one.tag === 'path') paths.push(String(one.attributes.d));
    for (const child of one.children) if (typeof child !== 'string') walk(child);
  };
  walk(figure);
  const back = inverted(view.onScreen);
  return paths
    .at(-1)!
    .split('M')
    .filter(Boolean)
    .map((line) =>
      line
        .replace('z', '')
        .split('L')
        .map((pair) => {
          const [x, y] = pair.split(' ').map(Number);
          return applied(back, { x: x!, y: y! });
        }),
    );
}
const area = (edge: readonly PlacePx[]) =>
  Math.abs(
    edge.reduce((sum, p, k) => {
      const q = edge[(k + 1) % edge.length]!;
      return sum + (p.x * q.y - q.x * p.y) / 2;
    }, 0),
  );

it('each zone’s spots lie on it and cover its share of what a face covers that bears all over', () => {
  const shares = [0.8, null, 0.3, 0.5];
  const spots = spotsOf(foretoldPrint({ title: 'Foretold', view, size, shares, seed: 'flat 4' }));
  const covered = [0, 0, 0, 0];
  for (const edge of spots) {
    const middle = edge.reduce((sum, { x }) => sum + x / edge.length, 0);
    const zone = Math.floor(middle / 60);
    covered[zone]! += area(edge);
    for (const { x, y } of edge) {
      expect(x).toBeGreaterThan(60 * zone - 1);
      expect(x).toBeLessThan(60 * zone + 61);
      expect(y).toBeGreaterThan(-1);
      expect(y).toBeLessThan(61);
    }
  }
  shares.forEach((share, k) => {
    expect(covered[k]! / 3600).toBeCloseTo((share ?? 0) * fullCover, 1);
  });
  expect(covered[1]).toBe(0);
});

it('a place on the screen goes back to the photo it is of', () => {
  const at = inPhoto(view, onScreen(view, { x: 0, y: 0 }));
  expect(at.x).toBeCloseTo(300, 6);
  expect(at.y).toBeCloseTo(200, 6);
});
