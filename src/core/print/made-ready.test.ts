import { describe, expect, it } from 'vitest';
import { madeReady, smallPrint } from './made-ready.ts';
import { readPrint } from './read-print.ts';

const small = (side_mm: number) => {
  const { picture, spots } = smallPrint(side_mm);
  const far = picture.width_px - 1;
  const corners = [
    { x: 0, y: 0 },
    { x: far, y: 0 },
    { x: far, y: far },
    { x: 0, y: far },
  ] as const;
  return { input: { picture, corners, size: { length_mm: side_mm, width_mm: side_mm } }, spots };
};

describe('the reader made ready', () => {
  it('goes through all of a reading: the small print has its spots read', () => {
    const { input, spots } = small(20);
    const reading = readPrint(input);
    expect(spots).toBe(16);
    expect(reading.spots.length).toBe(spots);
    // Discs of 1.2 mm radius, 5 mm apart.
    expect(Math.abs(reading.bearing_pct - (100 * Math.PI * 1.2 ** 2) / 25)).toBeLessThan(2);
  });

  it('leaves readings as they were, whatever was read before in the same memory', () => {
    const first = readPrint(small(30).input);
    const kept = structuredClone(first);
    madeReady();
    readPrint(small(50).input);
    readPrint(small(10).input);
    expect(first).toEqual(kept);
    expect(readPrint(small(30).input)).toEqual(kept);
  });

  it('reads a surface that glare hides in part, and then one of the same size that it does not', () => {
    const { input } = small(20);
    const clear = readPrint(input);
    const white = { ...input.picture, rgb: input.picture.rgb.slice().fill(255, 0, 60_000) };
    expect(readPrint({ ...input, picture: white }).trust.glare_pct).toBeGreaterThan(40);
    expect(readPrint(input)).toEqual(clear);
  });
});
