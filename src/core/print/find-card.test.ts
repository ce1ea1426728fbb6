import { describe, expect, it } from 'vitest';
import { drawnScene } from '../../../tests/fixture/print-scene.ts';
import { tuningPrints } from '../../../tests/fixture/tuning-prints.ts';
import { cardShape } from './card-shape.ts';
import { cardCorners, findCard } from './find-card.ts';
import { applied, composed, type Homography, surfaceToPhoto } from './homography.ts';
import type { Corners, PlacePx } from './picture.ts';

const seen: Corners = [
  { x: 260, y: 190 },
  { x: 900, y: 150 },
  { x: 985, y: 640 },
  { x: 215, y: 660 },
];
const toPhoto = surfaceToPhoto(seen, cardShape);

function rms(found: readonly PlacePx[], known: readonly PlacePx[]): number {
  const square = found.map((p, i) => (p.x - known[i]!.x) ** 2 + (p.y - known[i]!.y) ** 2);
  return Math.sqrt(square.reduce((sum, one) => sum + one, 0) / square.length);
}

/** The card turned on the bench by half a turn: its dot at the far end. */
const halfTurn: Homography = [-1, 0, cardShape.length_mm, 0, -1, cardShape.width_mm, 0, 0, 1];

describe('the corner card in a photo', () => {
  for (const [name, h] of [
    ['as it is read', toPhoto],
    ['turned by half a turn', composed(toPhoto, halfTurn)],
  ] as const)
    it(`is found ${name}, each corner where it was drawn`, () => {
      const found = findCard(drawnScene(1200, 900, [{ is: 'card', toPhoto: h }]));
      if ('why' in found) throw new Error(found.why);
      const known = cardCorners().map((p) => applied(h, p));
      expect(rms(found.corners_px, known)).toBeLessThan(0.3);
      expect(found.rms_px).toBeLessThan(0.3);
      const middle = { x: cardShape.length_mm / 2, y: cardShape.width_mm / 2 };
      const [here, there] = [applied(found.homography, middle), applied(h, middle)];
      expect(Math.hypot(here.x - there.x, here.y - there.y)).toBeLessThan(0.2);
    });

  it('is not found where there is none, and says so', () => {
    const size = { length_mm: 120, width_mm: 60 };
    const found = findCard(drawnScene(1200, 900, [{ is: 'surface', corners: seen, size }]));
    expect(found).toHaveProperty('why', expect.stringContaining('no corner card'));
  });

  // The corner error that prints.md section 3.2 gives for a careful reader is 0.6 to 1.0 px rms.
  for (const print of tuningPrints())
    it(`is ${print.card ? 'found' : 'not seen'} in ${print.name}`, async () => {
      const found = findCard(await print.picture());
      if (print.card === undefined) expect(found).toHaveProperty('why');
      else {
        if ('why' in found) throw new Error(found.why);
        expect(rms(found.corners_px, print.card)).toBeLessThan(0.5);
      }
    });
});
