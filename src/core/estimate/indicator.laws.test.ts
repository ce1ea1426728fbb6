import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { practiceJob } from '../../../tests/fixture/practice-job.ts';
import { scale } from '../body/vector.ts';
import { seededRandom } from '../math/random.ts';
import type { SteerInput } from '../observe/round.ts';
import type { Sweep } from '../observe/sweep.ts';
import { estimateSlide } from './estimate-slide.ts';

const seeds = fc.integer({ min: 1, max: 1e6 });
const rounds = fc.integer({ min: 1, max: 4 });

/** The sweeps of some rounds entered otherwise: one in two, by chance, so that rounds do not all agree. */
function entered(input: SteerInput, seed: number, otherwise: (sweep: Sweep, chance: () => number) => Sweep) {
  const random = seededRandom(seed);
  return {
    ...input,
    rounds: input.rounds.map((round) => ({
      ...round,
      sweeps: round.sweeps.map((sweep) => (random.even() < 0.5 ? sweep : otherwise(sweep, random.even))),
    })),
  };
}

/** All numbers and words that a job's estimate is made of, round by round, as a flat list of name and value. */
function told(input: SteerInput): [string, unknown][] {
  const { rounds, otherwise } = estimateSlide(input);
  const out: [string, unknown][] = [];
  const walk = (name: string, value: unknown): void => {
    if (typeof value === 'object' && value !== null)
      for (const [key, part] of Object.entries(value)) walk(`${name}.${key}`, part);
    else out.push([name, value]);
  };
  walk('rounds', rounds);
  walk('otherwise', otherwise);
  return out;
}

/** Signs cancel to the last digit; rows that are swapped are summed in the same order too. */
function expectSame(there: SteerInput, here: SteerInput): void {
  const found = told(there);
  const asked = told(here);
  expect(found.map(([name]) => name)).toEqual(asked.map(([name]) => name));
  asked.forEach(([name, value], i) => {
    const other = found[i]![1];
    if (typeof value !== 'number') expect(other, name).toBe(value);
    else
      expect(Math.abs((other as number) - value), name).toBeLessThanOrEqual(1e-6 * (1e-2 + Math.abs(value)));
  });
}

function law(otherwise: (sweep: Sweep, chance: () => number) => Sweep): void {
  fc.assert(
    fc.property(seeds, rounds, (seed, count) => {
      const here = practiceJob(seed, count);
      expectSame(entered(here, seed, otherwise), here);
    }),
    { numRuns: 12 },
  );
}

const flipped = (sweep: Sweep): Sweep => ({
  ...sweep,
  readings_um: sweep.readings_um.map((reading) => -reading),
  // From there the square's own error reads with the other sign as well.
  turned_over: !sweep.turned_over,
});

describe('how a sweep was taken, now one way, now another, over several rounds', () => {
  it('from the other side, the readings’ sign flipped: no answer changes', () => {
    law((sweep) => ({ ...flipped(sweep), plunger: scale(sweep.plunger, -1) }));
  });

  it('the square riding and the slide touched, the readings’ sign flipped: no answer changes', () => {
    law((sweep) => ({ ...flipped(sweep), rides: sweep.touches, touches: sweep.rides }));
  });

  it('zeroed elsewhere: no answer changes', () => {
    law((sweep, chance) => {
      const constant = 1000 * (chance() - 0.5);
      return { ...sweep, readings_um: sweep.readings_um.map((reading) => reading + constant) };
    });
  });

  it('every sweep of the job from the other side with the signs left: what the sweep sees changes sign', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const here = practiceJob(seed, 1);
        const there = {
          ...here,
          rounds: here.rounds.map((round) => ({
            ...round,
            sweeps: round.sweeps.map((sweep) => ({
              ...sweep,
              plunger: scale(sweep.plunger, -1),
              turned_over: !sweep.turned_over,
            })),
          })),
        };
        const [was, is] = [here, there].map((input) => estimateSlide(input).features[0]!);
        if (!was!.seen || !is!.seen) throw new Error('facing is not seen');
        expect(is!.value).toBeCloseTo(-was!.value, 6);
        expect(is!.sd).toBeCloseTo(was!.sd, 9);
      }),
      { numRuns: 12 },
    );
  });
});
