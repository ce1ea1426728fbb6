import { describe, expect, it } from 'vitest';
import { solveWithHighs } from '../../src/adapters/solver/highs.ts';
import type { Fault } from '../../src/core/practice/machine.ts';
import { practiceSlides } from '../../src/core/practice/slides.ts';
import { type Turn, turnsOf } from '../../src/shop/practise/turns.ts';

const task = practiceSlides['V and flat']!('liner');
const seeds = Array.from({ length: 24 }, (_, k) => k + 1);

interface Slip {
  readonly fault: Fault;
  /** The first round, from 0, whose readings can show it. */
  readonly shows: number;
}

/**
 * A slip made in a history, flagged within two rounds or not, and whether its kind was named. */
async function outcome(seed: number, { fault, shows }: Slip): Promise<{ flagged: boolean; named: boolean }> {
  const turns = await turnsOf(task, seed, shows + 2, solveWithHighs, [fault]);
  const alarms = turns.slice(shows).flatMap(({ known }) => (known.alarm ? [known.alarm] : []));
  const named = alarms.some(({ causes }) => causes.some(({ cause }) => cause.kind === fault.kind));
  return { flagged: alarms.length > 0, named };
}

/** Each seed's first three rounds with nothing wrong: what a slip is chosen by. */
let clean: Promise<readonly (readonly Turn[])[]> | undefined;
const cleanTurns = () => {
  clean ??= Promise.all(seeds.map((seed) => turnsOf(task, seed, 3, solveWithHighs)));
  return clean;
};

/** Tries the slip in each seed's history and each of the rounds in which there is one to make. */
async function shareFlagged(
  name: string,
  slipAt: (turn: Turn, at: number, seed: number) => Slip | undefined,
  rounds: readonly number[],
): Promise<number> {
  let made = 0;
  let flagged = 0;
  let named = 0;
  const histories = await cleanTurns();
  for (const [k, seed] of seeds.entries()) {
    const turns = histories[k]!;
    for (const at of rounds) {
      const turn = turns[at];
      const slip = turn && turn.decision.action !== 'stop' ? slipAt(turn, at, seed) : undefined;
      if (!slip) continue;
      const end = await outcome(seed, slip);
      made += 1;
      if (end.flagged) flagged += 1;
      if (end.named) named += 1;
    }
  }
  console.log(`${name}: ${flagged} of ${made} flagged within two rounds, ${named} with their cause named`);
  // Fewer would say nothing.
  expect(made).toBeGreaterThanOrEqual(10);
  return flagged / made;
}

/** Slips made on purpose in jobs of the practice saddle, fixed seeds. Floors stand a little below what was measured. */
describe('slips, flagged within two rounds', () => {
  // A facing within 25 µrad of 0 reads much the same with its sign turned: less than a round's own doubt. Measured: 59 of 59;
  // whatever the facing, 107 of 120 (seeds 1 to 40).
  it('a sweep reversed: nine of ten', async () => {
    const flagged = await shareFlagged(
      'sweep reversed',
      ({ truth }, at) =>
        Math.abs(truth.features.facing!) < 25
          ? undefined
          : { fault: { kind: 'sweep reversed', round: at, sweep: 0 }, shows: at },
      [0, 1, 2],
    );
    expect(flagged).toBeGreaterThanOrEqual(0.9);
  });

  // Measured: 18 of 24, and 34 of 36 over seeds 25 to 60. A round earlier the facing is foretold to 17 µrad at best, after the first scraping to
  // 32, by a hand that is hardly known: 40 µrad is then two sds or one, and no test can tell it.
  it('the square moved by 40 µrad once the removal is known: seven of ten', async () => {
    const flagged = await shareFlagged(
      'reference moved',
      (_, at, seed) => ({
        fault: { kind: 'reference moved', round: at, face: 'square', by_urad: seed % 2 ? 40 : -40 },
        shows: at + 1,
      }),
      [2],
    );
    expect(flagged).toBeGreaterThanOrEqual(0.7);
  });

  // Measured: 36 of 40. Before zones had a roughness of their own: any of the zones, down to a single pass, 20 of 69 (seeds 1 to 40); one missed in spotting, a micrometre
  // or two on one of 24 zones, 0 of 51: less than the scatter of passes.
  it('the zone that was to be scraped most missed: eight of ten', async () => {
    const flagged = await shareFlagged(
      'zone missed',
      ({ decision: { action, passes } }, at) => {
        const most = Math.max(...passes);
        return action === 'scrape' && most >= 2
          ? { fault: { kind: 'zone missed', round: at, zone: passes.indexOf(most) }, shows: at + 1 }
          : undefined;
      },
      [0, 1],
    );
    expect(flagged).toBeGreaterThanOrEqual(0.8);
  });

  // Measured: 10 of 40; before zones had a roughness of their own 16 of 69 over seeds 1 to 40 and a spotting pass too many 1 of 51. A pass too many looks like a heavier
  // hand until the removal is known, and by then the work is mostly spotting.
  it('a whole pass too many on a pad: one of seven', async () => {
    const flagged = await shareFlagged(
      'pass too many',
      ({ decision }, at, seed) =>
        decision.action === 'scrape'
          ? {
              fault: { kind: 'pass too many', round: at, pad: (seed + at) % task.slide.pads.length },
              shows: at + 1,
            }
          : undefined,
      [0, 1],
    );
    expect(flagged).toBeGreaterThanOrEqual(0.14);
  });
});
