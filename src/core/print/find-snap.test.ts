import { describe, expect, it } from 'vitest';
import { drawnScene } from '../../../tests/fixture/print-scene.ts';
import { snapCorner } from './find-snap.ts';
import type { Corners, PlacePx } from './picture.ts';

const corners: Corners = [
  { x: 210, y: 250 },
  { x: 1015, y: 205 },
  { x: 1075, y: 590 },
  { x: 165, y: 640 },
];
const picture = drawnScene(1200, 900, [{ is: 'surface', corners, size: { length_mm: 160, width_mm: 70 } }]);
const off = (a: PlacePx, b: PlacePx) => Math.hypot(a.x - b.x, a.y - b.y);
const moved = ({ x, y }: PlacePx, dx: number, dy: number) => ({ x: x + dx, y: y + dy });

describe('a corner put down by thumb', () => {
  corners.forEach((corner, i) => {
    const neighbours: [PlacePx, PlacePx] = [
      moved(corners[(i + 3) % 4]!, 12, -9),
      moved(corners[(i + 1) % 4]!, -8, 11),
    ];
    for (const [dx, dy] of [
      [14, 9],
      [-12, 13],
      [-9, -15],
    ] as const)
      it(`is pulled to corner ${i} from ${dx}, ${dy} px beside it, its neighbours in either order`, () => {
        const found = snapCorner(picture, moved(corner, dx, dy), 32, neighbours);
        expect(off(found, corner)).toBeLessThan(3.5);
        const [one, other] = neighbours;
        expect(off(snapCorner(picture, moved(corner, dx, dy), 32, [other, one]), found)).toBeLessThan(1e-9);
      });
  });

  it('stays where it is on the bench, in the middle of the surface and outside the photo', () => {
    for (const thumb of [
      { x: 600, y: 800 },
      { x: 620, y: 420 },
      { x: -500, y: 20 },
    ])
      expect(snapCorner(picture, thumb, 32, [moved(thumb, 300, 0), moved(thumb, 0, 300)])).toEqual(thumb);
  });

  it('never goes farther than the radius', () => {
    for (let k = 0; k < 40; k++) {
      const thumb = { x: 100 + ((k * 137) % 1000), y: 120 + ((k * 89) % 600) };
      expect(off(snapCorner(picture, thumb, 25, [corners[0], corners[2]]), thumb)).toBeLessThanOrEqual(25);
    }
  });
});
