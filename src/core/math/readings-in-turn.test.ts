import fc from 'fast-check';
import { expect, it } from 'vitest';
import { gaussian, takeReading } from './gaussian.ts';
import { seededRandom } from './random.ts';
import { readingsInTurn } from './readings-in-turn.ts';

/** A state of `size` with a covariance that is a sum of squares, and rows to read it by. */
function drawn(seed: number, size: number, many: number) {
  const random = seededRandom(seed);
  const state = () => {
    const again = seededRandom(seed + 1);
    const g = gaussian(size);
    const root = Array.from({ length: size }, () => Array.from({ length: size }, () => again.normal(0, 2)));
    for (let i = 0; i < size; i++) {
      g.mean[i] = again.normal(0, 5);
      for (let j = 0; j < size; j++)
        g.covariance[i * size + j] = root[i]!.reduce((sum, part, k) => sum + part * root[j]![k]!, 0);
    }
    return g;
  };
  const readings = Array.from({ length: many }, () => ({
    row: Float64Array.from({ length: size }, () => random.normal(0, 1)),
    value: random.normal(0, 10),
    noise: 0.5 + random.even(),
  }));
  return { state, readings };
}

const near = (a: ArrayLike<number>, b: ArrayLike<number>, least: number) => {
  for (let i = 0; i < a.length; i++)
    expect(Math.abs(a[i]! - b[i]!)).toBeLessThanOrEqual(1e-9 * Math.max(least, Math.abs(b[i]!)));
};

it('leaves what the readings leave when they are taken one by one, and tells each of them the same', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 1e6 }),
      fc.integer({ min: 1, max: 9 }),
      fc.integer({ min: 0, max: 12 }),
      (seed, size, many) => {
        const { state, readings } = drawn(seed, size, many);
        const one = state();
        const all = state();
        const turn = readingsInTurn(all);
        for (const { row, value, noise } of readings) {
          const alone = takeReading(one, row, value, noise);
          const inTurn = turn.take(row, turn.seen(row), value, noise);
          near([inTurn.off, inTurn.variance], [alone.off, alone.variance], 10);
          near(inTurn.seen, alone.seen, 10);
        }
        turn.end();
        near(all.mean, one.mean, 10);
        near(all.covariance, one.covariance, 10);
      },
    ),
    { numRuns: 60 },
  );
});

it('takes a reading in the short form as in Joseph’s', () => {
  // The same reading, once with ordinary noise and once with so little that Joseph's form is taken; the textbook's own numbers:
  // two unit normals with a correlation of 1/2, the first read as 2 with a noise of 1: mean (1, 1/2), covariance [[1/2, 1/4], [1/4, 7/8]].
  const g = gaussian(2);
  g.covariance.set([1, 0.5, 0.5, 1]);
  takeReading(g, [1, 0], 2, 1);
  near(g.mean, [1, 0.5], 1);
  near(g.covariance, [0.5, 0.25, 0.25, 0.875], 1);
  // Read again with next to no doubt: the first is what was read, the second follows by 1/2 of it, its own variance 7/8 − 1/8.
  takeReading(g, [1, 0], 3, 1e-9);
  near(g.mean, [3, 1.5], 100);
  near(g.covariance, [1e-9, 5e-10, 5e-10, 0.75], 1000);
});
