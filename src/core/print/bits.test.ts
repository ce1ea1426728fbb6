import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Bits,
  bitsAbove,
  bitsOf,
  countAll,
  countIn,
  either,
  hasBit,
  noBits,
  setInBytes,
  setRun,
  without,
} from './bits.ts';

/** Bits as the 0 and 1 they stand for. */
const spelled = (bits: Bits): number[] =>
  Array.from({ length: bits.width * bits.height }, (_, o) =>
    hasBit(bits, o % bits.width, Math.floor(o / bits.width)) ? 1 : 0,
  );

const rasters = fc
  .tuple(fc.integer({ min: 1, max: 100 }), fc.integer({ min: 1, max: 9 }))
  .chain(([width, height]) =>
    fc.record({
      width: fc.constant(width),
      height: fc.constant(height),
      one: fc.array(fc.constantFrom(0, 1), { minLength: width * height, maxLength: width * height }),
      other: fc.array(fc.constantFrom(0, 1), { minLength: width * height, maxLength: width * height }),
    }),
  );

describe('bits', () => {
  it('are the raster they were made from, counted, joined and parted as it', () => {
    fc.assert(
      fc.property(rasters, ({ width, height, one, other }) => {
        const a = bitsOf(Uint8Array.from(one), width, height);
        const b = bitsAbove(Float32Array.from(other), 0.5, width, height);
        expect(spelled(a)).toEqual(one);
        expect(spelled(b)).toEqual(other);
        expect(spelled(bitsOf(Uint8Array.from(one), width, height, 0))).toEqual(one.map((is) => 1 - is));
        expect(countAll(a)).toBe(one.filter((is) => is === 1).length);
        expect(spelled(either(a, b))).toEqual(one.map((is, o) => is | other[o]!));
        expect(spelled(without(a, b))).toEqual(one.map((is, o) => is & (1 - other[o]!)));
      }),
    );
  });

  it('are set and counted over a run of a row, and nowhere else', () => {
    const run = fc
      .tuple(fc.integer({ min: 1, max: 140 }), fc.nat(1e6), fc.nat(1e6), fc.nat(2))
      .map(([width, a, b, j]) => {
        const [from, to] = [Math.min(a % width, b % width), Math.max(a % width, b % width) + 1];
        return { width, from, to, j };
      });
    fc.assert(
      fc.property(run, ({ width, from, to, j }) => {
        const bits = noBits(width, 3);
        setRun(bits, j * width + from, j * width + to);
        expect(spelled(bits)).toEqual(
          Array.from({ length: 3 * width }, (_, o) => (o >= j * width + from && o < j * width + to ? 1 : 0)),
        );
        expect(countIn(bits, j, from, to)).toBe(to - from);
        expect(countIn(bits, j, 0, width)).toBe(to - from);
        expect(countIn(bits, (j + 1) % 3, 0, width)).toBe(0);
        expect(countIn(bits, j, from, from)).toBe(0);
      }),
    );
  });

  it('are counted byte by byte', () => {
    expect(setInBytes(-1)).toBe(0x08080808);
    expect(setInBytes(0x01030780) >>> 0).toBe(0x01020301);
  });
});
