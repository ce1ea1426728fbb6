import { describe, expect, it } from 'vitest';
import { bitsOf, countAll } from './bits.ts';
import { contactOf } from './contact.ts';
import type { Film } from './film.ts';
import { rasterPxPerMm } from './rectified.ts';

const [width, height] = [20 * rasterPxPerMm, 10 * rasterPxPerMm];
const none = new Uint8Array(width * height);
const far = (o: number, x: number, y: number) =>
  Math.hypot(((o % width) + 0.5) / rasterPxPerMm - x, (Math.floor(o / width) + 0.5) / rasterPxPerMm - y);
const raster = (at: (o: number) => number) => Float32Array.from({ length: width * height }, (_, o) => at(o));

const film = (strength: Float32Array, gleam: Float32Array, noise = 0.05): Film => ({
  strength,
  gleam,
  noise,
  haze: 0.1,
  blur_mm: 0.1,
});
const dull = raster(() => -0.1);
const found = (strength: Float32Array, gleam = dull, out = none, overBlued = false, noise = 0.05) => {
  const contact = contactOf(
    film(strength, gleam.slice(), noise),
    strength,
    overBlued,
    bitsOf(out, width, height),
  );
  return {
    count: contact.area.filter((many) => many > 0).length,
    area_mm2: countAll(contact.bears) / rasterPxPerMm ** 2,
    burnished: countAll(contact.burnished) > 0,
  };
};
const disc = raster((o) => (far(o, 6, 5) < 2 ? 1 : 0));
const ring = raster((o) => (far(o, 6, 5) < 2 && far(o, 6, 5) > 1 ? 1 : 0));

describe('contact', () => {
  it('is a disc of full film, to its area', () => {
    const { count, area_mm2 } = found(disc);
    expect(count).toBe(1);
    expect(area_mm2 / (4 * Math.PI)).toBeCloseTo(1, 1);
  });

  it('is not what never gets strong, what is small, or what lies within the noise', () => {
    expect(found(raster((o) => 0.6 * disc[o]!)).count).toBe(0);
    expect(found(raster((o) => (far(o, 6, 5) < 0.12 ? 1 : 0))).count).toBe(0);
    expect(found(raster((o) => 0.75 * disc[o]!)).count).toBe(1);
    expect(
      found(
        raster((o) => 0.75 * disc[o]!),
        dull,
        none,
        false,
        0.4,
      ).count,
    ).toBe(0);
  });

  it('has a bright middle filled as burnished, and leaves a dull one as a gap', () => {
    const bright = raster((o) => (far(o, 6, 5) <= 1 ? 0.2 : -0.1));
    const filled = found(ring, bright);
    const open = found(ring);
    expect(filled.burnished).toBe(true);
    expect(filled.area_mm2 / (4 * Math.PI)).toBeCloseTo(1, 1);
    expect(open.burnished).toBe(false);
    expect(open.area_mm2).toBeLessThan(0.85 * filled.area_mm2);
  });

  it('leaves a hole that touches something excluded, whatever its brightness', () => {
    const bright = raster((o) => (far(o, 6, 5) <= 1 ? 0.2 : -0.1));
    const out = Uint8Array.from(none, (_, o) => (far(o, 6, 5) < 0.3 ? 1 : 0));
    expect(found(ring, bright, out).burnished).toBe(false);
  });

  it('does not join two spots by the hazy film between them, and cuts higher where blue was dragged', () => {
    // 0.3 of full film between two discs 1 mm apart: below the cut, above where film ends.
    const pair = raster((o) =>
      far(o, 6, 5) < 2 || far(o, 11, 5) < 2 ? 1 : Math.abs(far(o, 8.5, 5)) < 1.5 ? 0.3 : 0,
    );
    expect(found(pair).count).toBe(2);
    const streak = raster((o) => Math.max(pair[o]!, far(o, 8.5, 5) < 1.5 ? 0.45 : 0));
    expect(found(streak).count).toBe(1);
    expect(found(streak, dull, none, true).count).toBe(2);
  });
});
