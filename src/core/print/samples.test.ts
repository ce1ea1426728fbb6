import { describe, expect, it } from 'vitest';
import { samplePlaces, valuesAt } from './samples.ts';

describe('places for statistics', () => {
  it('lie evenly inside, in rising order, and tell the share of a half', () => {
    const [width, height] = [1003, 801];
    const places = samplePlaces(width, height, new Uint8Array(width * height));
    expect(places.length).toBeGreaterThan(40_000);
    expect(places.length).toBeLessThan(80_000);
    places.forEach((o, k) => {
      const i = o % width;
      const j = Math.floor(o / width);
      if (i < 1 || j < 1 || i > width - 2 || j > height - 2) expect.fail(`${i}, ${j} is at the edge`);
      if (k > 0 && o <= places[k - 1]!) expect.fail(`place ${k} does not rise`);
    });
    const half = Float32Array.from({ length: width * height }, (_, o) => (o % width < width / 2 ? 1 : 0));
    const share = valuesAt(half, places).reduce((sum, one) => sum + one, 0) / places.length;
    expect(Math.abs(share - 0.5)).toBeLessThan(0.005);
  });

  it('leave out what does not count, and are none where nothing does or there is no inside', () => {
    const out = Uint8Array.from({ length: 40 * 30 }, (_, o) => (o % 40 < 20 ? 1 : 0));
    const places = samplePlaces(40, 30, out);
    expect(places.length).toBeGreaterThan(0);
    expect(places.every((o) => out[o] === 0)).toBe(true);
    expect(samplePlaces(40, 30, new Uint8Array(1200).fill(1))).toHaveLength(0);
    expect(samplePlaces(2, 30, new Uint8Array(60))).toHaveLength(0);
    expect(samplePlaces(1, 1, new Uint8Array(1))).toHaveLength(0);
  });
});
