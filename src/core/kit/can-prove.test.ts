import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canProve, canSay } from './can-prove.ts';
import { partsOfDoubt, together } from './doubt-of.ts';
import type { Kit, KitTarget, SetUp, SquareSweep } from './kit.ts';

const kit: Kit = {
  instruments: [
    { kind: 'indicator', name: 'dial', graduation_um: 10, repeatability_um: 2 },
    { kind: 'indicator', name: 'lever', graduation_um: 2, repeatability_um: 0.7 },
    { kind: 'level', name: 'level', graduation_urad: 20, repeatability_urad: 5, base_mm: 200, class: 'A' },
    {
      kind: 'autocollimator',
      name: 'mirror',
      graduation_urad: 1,
      repeatability_urad: 2.4240684,
      base_mm: 100,
    },
  ],
  references: [
    {
      kind: 'square',
      name: 'square',
      length_mm: 300,
      known: { by: 'grade', standard: 'DIN 875', grade: '0' },
    },
    {
      kind: 'straightedge',
      name: 'edge',
      length_mm: 1000,
      known: { by: 'certificate', doubt_um: 4 },
      depth_mm: 100,
      material: 'cast iron',
    },
    {
      kind: 'test bar',
      name: 'bar',
      length_mm: 300,
      known: { by: 'limit', limit_um: 5 },
      depth_mm: 40,
      material: 'steel',
    },
    {
      kind: 'plate',
      name: 'plate',
      length_mm: 630,
      width_mm: 400,
      known: { by: 'certificate', doubt_um: 3 },
    },
  ],
};
const sweep: SquareSweep = {
  method: 'square sweep',
  name: 'square on the cross ways',
  instrument: 'dial',
  reference: 'square',
  length_mm: 150,
  points: 5,
  sweeps: 1,
  seats: 1,
  turned_over: false,
};
const facing: KitTarget = { name: 'facing', low: 20, high: 66.7, unit: 'urad' };
const sdOf = (setup: SetUp): number => together(partsOfDoubt(setup, kit));
const part = (setup: SetUp, what: string): number =>
  partsOfDoubt(setup, kit).find((one) => one.what === what)!.sd;

describe('the doubt of a set-up', () => {
  it('a line through n places evenly apart: what least squares gives, worked from Σ(x − x̄)²', () => {
    const places = [0, 37.5, 75, 112.5, 150];
    const square = places.reduce((sum, x) => sum + (x - 75) ** 2, 0);
    expect(part(sweep, 'reading')).toBeCloseTo(
      (Math.hypot(10 / Math.sqrt(12), 2) * 1000) / Math.sqrt(square),
      9,
    );
  });
  it('a square of 11 µm in 300, the grade’s limit, counts as evenly likely within it', () =>
    expect(part(sweep, 'reference')).toBeCloseTo(((11 / Math.sqrt(3)) * 1000) / 300, 9));
  it('a mirror stepped ten feet of 100 mm at half a second: 0.383 µm at the middle (derived in the check values)', () => {
    const fine: Kit = {
      ...kit,
      instruments: [{ ...kit.instruments[3]!, graduation_urad: 1e-9 } as Kit['instruments'][number]],
    };
    const parts = partsOfDoubt(
      { method: 'level walk', name: 'w', instrument: 'mirror', length_mm: 1000, runs: 1 },
      fine,
    );
    expect(together(parts)).toBeCloseTo(0.383278868, 6);
  });
  it('turning the reference over takes its error out and halves the reading’s variance', () => {
    const over = { ...sweep, turned_over: true };
    expect(part(over, 'reference')).toBe(0);
    expect(part(over, 'reading')).toBeCloseTo(part(sweep, 'reading') / Math.SQRT2, 12);
  });
  it('sag that is left in is a bound, taken out it leaves the modulus’ doubt; from the side there is none', () => {
    const edge: SetUp = {
      method: 'straightedge sweep',
      name: 'e',
      instrument: 'lever',
      reference: 'edge',
      length_mm: 900,
      sweeps: 1,
      seats: 1,
      turned_over: false,
      plane: 'vertical',
      support_mm: 0,
      sag_taken_out: false,
      warmth: { warmer_K: 1, sd_K: 0 },
    };
    // 5ρgL⁴/32Eh² of 1000 × 100 cast iron: 10.0295 µm; bow αL²ΔT/8h: 13.5 µm.
    expect(part(edge, 'sag')).toBeCloseTo(10.0295 / Math.sqrt(3), 3);
    expect(part({ ...edge, sag_taken_out: true }, 'sag')).toBeCloseTo((10.0295 * 8) / 110, 3);
    expect(part(edge, 'warmth')).toBeCloseTo(13.5 / Math.sqrt(3), 6);
    expect(partsOfDoubt({ ...edge, plane: 'horizontal' }, kit).map((one) => one.what)).not.toContain('sag');
  });
});

describe('can this kit prove it?', () => {
  it.each([
    [12, 'easily'],
    [10, 'easily'],
    [4, 'yes'],
    [3.99, 'when clear of the limits'],
    [1, 'only near the middle'],
    [0.99, 'no'],
  ])('a ratio of %d: %s', (ratio, says) => expect(canSay(ratio)).toBe(says));
  it('names the largest part, and its cheapest betterment is better, reaches four to one and is the quickest of the single steps that do', () => {
    const proof = canProve(facing, sweep, kit);
    expect(proof.can).toBe('no');
    expect(proof.limited_by).toBe('reading');
    const { cheapest } = proof;
    expect(cheapest!.ratio).toBeGreaterThanOrEqual(4);
    expect(cheapest!.doubt).toBeCloseTo(2 * sdOf(cheapest!.setup), 9);
    for (const step of proof.steps.filter((one) => one.ratio >= 4))
      expect(cheapest!.minutes).toBeLessThanOrEqual(step.minutes);
  });
  it('a band no kit can reach: the best it does, and what would have to come down', () => {
    const proof = canProve({ ...facing, low: 42, high: 43 }, sweep, kit);
    expect(proof.cheapest).toBeUndefined();
    expect(proof.best!.doubt).toBeLessThan(proof.doubt);
    for (const step of proof.steps) expect(proof.best!.doubt).toBeLessThanOrEqual(step.doubt * (1 + 1e-12));
  });
  it('when it is good enough already nothing is asked for', () => {
    const proof = canProve({ ...facing, low: -900, high: 900 }, sweep, kit);
    expect(proof).toMatchObject({ can: 'easily' });
    expect(proof.cheapest).toBeUndefined();
    expect(proof.best).toBeUndefined();
  });
  it('every step it names lowers the doubt, whatever the set-up', () => {
    const size = fc.integer({ min: 1, max: 9 });
    fc.assert(
      fc.property(
        size,
        size,
        fc.integer({ min: 3, max: 30 }),
        fc.boolean(),
        fc.integer({ min: 40, max: 300 }),
        (sweeps, seats, points, turned_over, length_mm) => {
          const setup = { ...sweep, sweeps, seats, points, turned_over, length_mm };
          const proof = canProve(facing, setup, kit);
          expect(proof.doubt).toBeCloseTo(2 * sdOf(setup), 9);
          for (const step of proof.steps) expect(step.doubt).toBeLessThan(proof.doubt);
        },
      ),
      { numRuns: 40 },
    );
  });
  it('an instrument that is not in the kit is refused by name', () =>
    expect(() => canProve(facing, { ...sweep, instrument: 'laser' }, kit)).toThrow(/laser/));
});
