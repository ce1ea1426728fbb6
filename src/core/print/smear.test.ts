import { describe, expect, it } from 'vitest';
import { isOverBlued, smearOf, withoutStreaks } from './smear.ts';

const side = 120;
const none = new Uint8Array(side * side);
const raster = (at: (i: number, j: number) => number) =>
  Float32Array.from({ length: side * side }, (_, o) => at(o % side, Math.floor(o / side)));

/** Faint waves of film whose crests run at this angle to the length. */
const streaks = (angle: number) =>
  raster((i, j) => 0.3 + 0.1 * Math.sin(0.5 * (j * Math.cos(angle) - i * Math.sin(angle))));

describe('dragged blue', () => {
  it('is seen as faint film that runs one way, and across which way', () => {
    for (const angle of [0, 0.4, -0.7]) {
      const smear = smearOf(streaks(angle), side, side, none);
      expect(isOverBlued(smear)).toBe(true);
      expect(smear.alike).toBeGreaterThan(0.95);
      expect(smear.faint).toBe(1);
      const off = smear.across_rad - (angle + Math.PI / 2);
      expect(Math.abs(Math.sin(off))).toBeLessThan(0.03);
    }
  });

  it('is not seen where faint film runs every way, where none is faint, or where nothing counts', () => {
    const waves = raster((i, j) => 0.3 + 0.05 * Math.sin(0.5 * i) + 0.05 * Math.sin(0.5 * j));
    expect(smearOf(waves, side, side, none).alike).toBeLessThan(0.1);
    expect(isOverBlued(smearOf(waves, side, side, none))).toBe(false);
    expect(
      isOverBlued(
        smearOf(
          raster(() => 0),
          side,
          side,
          none,
        ),
      ),
    ).toBe(false);
    expect(
      isOverBlued(
        smearOf(
          raster(() => 1),
          side,
          side,
          none,
        ),
      ),
    ).toBe(false);
    const all = new Uint8Array(side * side).fill(1);
    const nothing = smearOf(streaks(0), side, side, all);
    expect(nothing).toMatchObject({ alike: 0, faint: 0 });
  });
});

describe('streaks taken out', () => {
  const line = raster((_, j) => (j === 40 ? 1 : 0));
  const block = raster((i, j) => (i >= 30 && i < 60 && j >= 70 && j < 100 ? 1 : 0));

  it('goes with a thin line along the rub, and leaves one across it', () => {
    expect(Math.max(...withoutStreaks(line, side, side, Math.PI / 2))).toBe(0);
    expect(withoutStreaks(line, side, side, 0)).toEqual(line);
  });

  it('leaves a spot as it is, and done twice does no more', () => {
    expect(withoutStreaks(block, side, side, Math.PI / 2)).toEqual(block);
    const once = withoutStreaks(streaks(0.3), side, side, 0.3 + Math.PI / 2);
    const twice = withoutStreaks(once, side, side, 0.3 + Math.PI / 2);
    expect(twice).toEqual(once);
  });

  it('never adds', () => {
    const given = streaks(0.9);
    const left = withoutStreaks(given, side, side, 1.1);
    expect(left.every((one, o) => one <= given[o]!)).toBe(true);
  });
});
