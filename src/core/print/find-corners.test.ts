import { describe, expect, it } from 'vitest';
import { drawnScene } from '../../../tests/fixture/print-scene.ts';
import { tuningPrints } from '../../../tests/fixture/tuning-prints.ts';
import { findCorners } from './find-corners.ts';
import { composed, surfaceToPhoto } from './homography.ts';
import type { Corners } from './picture.ts';

const size = { length_mm: 160, width_mm: 70 };
const seen = turnedBy(-5);

function worst(found: Corners, known: Corners): number {
  return Math.max(...found.map((p, i) => Math.hypot(p.x - known[i]!.x, p.y - known[i]!.y)));
}

/** Four corners about a place, turned and drawn in where they lie farther off, as a camera that looks down at a slant sees them. */
function turnedBy(degrees: number): Corners {
  const angle = (degrees * Math.PI) / 180;
  const about = [
    { x: -80, y: -35 },
    { x: 80, y: -35 },
    { x: 80, y: 35 },
    { x: -80, y: 35 },
  ].map(({ x, y }) => {
    const u = x * Math.cos(angle) - y * Math.sin(angle);
    const v = x * Math.sin(angle) + y * Math.cos(angle);
    // Camera 420 mm away, tilted by 25°, focal length 1200 px.
    const far = 420 - v * Math.sin(0.436);
    return { x: 599.5 + (1200 * u) / far, y: 449.5 + (1200 * v * Math.cos(0.436)) / far };
  });
  return about as unknown as Corners;
}

describe("the surface's corners in a photo", () => {
  it('are found where they were drawn, in order from the top left, with a doubt that covers the rest', () => {
    const found = findCorners(drawnScene(1200, 900, [{ is: 'surface', corners: seen, size }]), size);
    if ('why' in found) throw new Error(found.why);
    expect(found.how).toBe('outline');
    expect(worst(found.corners, seen)).toBeLessThan(2.5);
    expect(worst(found.corners, seen)).toBeLessThan(found.doubt_px);
  });

  for (const degrees of [-24, 31, 75])
    it(`are found turned by ${degrees}°, noise and all`, () => {
      const known = turnedBy(degrees);
      const found = findCorners(drawnScene(1200, 900, [{ is: 'surface', corners: known, size }], 5), size);
      if ('why' in found) throw new Error(found.why);
      const [a, b, c, d] = known;
      const off = Math.min(worst(found.corners, known), worst(found.corners, [c, d, a, b]));
      expect(off).toBeLessThan(3);
      const first = found.corners[0];
      const third = found.corners[2];
      expect(Math.hypot(first.x, first.y)).toBeLessThanOrEqual(Math.hypot(third.x, third.y));
    });

  it('run the first side along the length when that is the shorter one', () => {
    const tall = { length_mm: 70, width_mm: 160 };
    const found = findCorners(drawnScene(1200, 900, [{ is: 'surface', corners: seen, size }]), tall);
    if ('why' in found) throw new Error(found.why);
    const [a, b, c, d] = seen;
    expect(Math.min(worst(found.corners, [b, c, d, a]), worst(found.corners, [d, a, b, c]))).toBeLessThan(
      2.5,
    );
  });

  it('are not claimed on a bare bench', () => {
    expect(findCorners(drawnScene(1200, 900, []), size)).toHaveProperty(
      'why',
      expect.stringContaining('drag the corners'),
    );
  });

  it('are not claimed where two surfaces of that shape lie', () => {
    const half = (x: number): Corners => [
      { x: x + 60, y: 300 },
      { x: x + 500, y: 300 },
      { x: x + 500, y: 492.5 },
      { x: x + 60, y: 492.5 },
    ];
    const picture = drawnScene(1200, 900, [
      { is: 'surface', corners: half(0), size },
      { is: 'surface', corners: half(600), size },
    ]);
    expect(findCorners(picture, size)).toHaveProperty('why', expect.stringContaining('2 surfaces'));
  });

  it('are not claimed for a surface that runs out of the photo', () => {
    const out = seen.map(({ x, y }) => ({ x: x - 480, y })) as unknown as Corners;
    expect(findCorners(drawnScene(1200, 900, [{ is: 'surface', corners: out, size }]), size)).toHaveProperty(
      'why',
    );
  });

  it('are not claimed for a surface of another shape', () => {
    const other = { length_mm: 230, width_mm: 70 };
    expect(
      findCorners(drawnScene(1200, 900, [{ is: 'surface', corners: seen, size }]), other),
    ).toHaveProperty('why', expect.stringContaining('230 × 70 mm'));
  });

  describe('with the card in view', () => {
    const corners: Corners = [
      { x: 290, y: 90 },
      { x: 910, y: 70 },
      { x: 930, y: 335 },
      { x: 270, y: 360 },
    ];
    const surface = surfaceToPhoto(corners, size);
    const picture = drawnScene(1200, 900, [
      { is: 'surface', corners, size },
      // 12 mm below the surface, in its plane.
      { is: 'card', toPhoto: composed(surface, [1, 0, 4, 0, 1, 82, 0, 0, 1]) },
    ]);

    it('are borne out by its scale', () => {
      const found = findCorners(picture, size);
      if ('why' in found) throw new Error(found.why);
      expect(found.how).toBe('card');
      expect(worst(found.corners, corners)).toBeLessThan(2.5);
    });

    it('are not claimed when the card says the size is another, and the size is told', () => {
      const found = findCorners(picture, { length_mm: 160, width_mm: 60 });
      expect(found).toHaveProperty(
        'why',
        expect.stringMatching(/by the card .* 1(59|60)\.\d × (69|70)\.\d mm/),
      );
    });
  });

  for (const print of tuningPrints())
    it(`are found in ${print.name}`, async () => {
      const found = findCorners(await print.picture(), print.size);
      if ('why' in found) throw new Error(found.why);
      expect(found.how).toBe(print.card ? 'card' : 'outline');
      const off = worst(found.corners, print.corners);
      expect(off).toBeLessThan(6);
      expect(off).toBeLessThan(found.doubt_px);
    });
});
