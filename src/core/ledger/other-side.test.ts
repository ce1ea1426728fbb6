import { describe, expect, it } from 'vitest';
import { inventedPlan, written } from '../../../tests/fixture/invented-job.ts';
import { estimateSlide } from '../estimate/estimate-slide.ts';
import { foldJob } from './job.ts';
import { asMade, fromOtherSide } from './other-side.ts';
import { steerInput } from './steer-input.ts';

const square = inventedPlan.setups.find((one) => one.kind === 'sweep')!;
if (square.kind !== 'sweep') throw new Error('the invented job has a sweep');
const { places } = inventedPlan;

const facing = (values: readonly number[], other_side?: true) => {
  const job = foldJob(
    written([
      { kind: 'job made', plan: inventedPlan },
      {
        kind: 'sweep taken',
        round: 1,
        setup: square.id,
        record: { push: 'climbed', ...(other_side ? { other_side } : {}) },
        readings: values.map((value) => ({ typed: `${value}`, value })),
      },
    ]),
  );
  const found = estimateSlide(steerInput(job)).features.find(({ name }) => name === 'facing')!;
  if (!found.seen) throw new Error('the sweep sees facing');
  return found;
};
const values = [1, 6, 9, 15, 21];

describe('a sweep made from its other side', () => {
  it('says so itself: the plunger points the other way, climbing means what falling meant', () => {
    const other = fromOtherSide(square, places);
    expect(other.plunger).toEqual([1, -0, -0]);
    expect([other.climbs_words, other.falls_words]).toEqual(['convex', 'concave']);
    expect(other.plus_words).toBe('plunger in. It points toward the tailstock end.');
    expect(fromOtherSide({ ...square, plunger: [0, 1, 0] }, places).plus_words).toContain('your side');
    expect(fromOtherSide({ ...square, plunger: [0, 0, -1] }, places).plus_words).toContain('points up');
    expect(asMade(square, {}, places)).toBe(square);
  });

  it('with what its dial shows there gives the same facing, but for the known slope of the face that it does not touch', () => {
    const seen = facing(values);
    const across = facing(
      values.map((value) => -value),
      true,
    );
    // The face of the card leans by a known 2 µrad, of which nothing is known on the opposite face.
    expect(Math.abs(across.value - seen.value)).toBeLessThan(2.05);
    expect(Math.abs(across.value - seen.value)).toBeGreaterThan(1.8);
    expect(across.value * seen.value).toBeGreaterThan(0);
    expect(across.sd).toBeCloseTo(seen.sd, 6);
    // Not told, the same dial would say the opposite.
    expect(facing(values.map((value) => -value)).value * seen.value).toBeLessThan(0);
  });
});
