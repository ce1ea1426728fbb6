import type { Level } from '../observe/level.ts';
import type { Print } from '../observe/round.ts';
import type { Sweep } from '../observe/sweep.ts';
import { type Fault, type PracticeMachine, practiceMachine, type Truth } from './machine.ts';
import { dialOf, type MadePasses, type PracticeRecord, practiceTask, slipsMade } from './record.ts';

/** What the instruments show in a round, in the order of the slide's set-ups. */
export interface ShownReadings {
  /** As shown: with a dial that falls when pushed every sign is turned. */
  readonly sweeps: readonly (Sweep & { readonly push: 'climbed' | 'fell' })[];
  readonly levels: readonly Level[];
}

/** The truth of a practice machine, round by round as it stood when it was measured. */
export interface ShownTruth {
  readonly rounds: readonly Truth[];
  /** Slips that have been made so far; rounds from 0. */
  readonly slips: readonly Fault[];
}

/**
 * A practice machine as a job has left it, worked out anew from what made it and from the passes really made: the same
 * record and passes give the same machine, so that undo and reload find it where it was. Each round is measured once,
 * blued once and scraped as was done; `each` hears of the machine before a round's readings.
 *
 * @param made  passes of the rounds that are over, oldest first, one number a zone
 */
function replayed(
  record: PracticeRecord,
  made: readonly MadePasses[],
  each: (machine: PracticeMachine) => void = () => undefined,
): PracticeMachine {
  const machine = practiceMachine(practiceTask(record), record.seed, slipsByStep(record, made));
  for (const { whole, spot } of made) {
    each(machine);
    machine.measure();
    machine.print();
    const spotted = spot.some((m) => m > 0);
    if (!spotted || whole.some((m) => m > 0)) machine.scrape(whole);
    if (spotted) machine.spot(spot);
  }
  each(machine);
  return machine;
}

/** The machine counts each scraping as a round; a round that was scraped and then spotted is two of them. */
function slipsByStep(record: PracticeRecord, made: readonly MadePasses[]): Fault[] {
  const both = made.map(({ whole, spot }) => whole.some((m) => m > 0) && spot.some((m) => m > 0));
  const stepOf = (round: number): number =>
    round + both.slice(0, round).reduce((more, two) => more + (two ? 1 : 0), 0);
  return slipsMade(record, made).flatMap((slip): Fault[] => {
    const step = stepOf(slip.round);
    const again = slip.kind === 'zone missed' && both[slip.round];
    return [{ ...slip, round: step }, ...(again ? [{ ...slip, round: step + 1 }] : [])];
  });
}

/**
 * The readings of the coming round.
 * @param repeat  above 0: seated and read again, once more each time
 */
export function practiceReadings(
  record: PracticeRecord,
  made: readonly MadePasses[],
  repeat = 0,
): ShownReadings {
  const machine = replayed(record, made);
  const first = machine.measure();
  const { sweeps, levels } = repeat === 0 ? first : machine.measure(repeat);
  return {
    sweeps: sweeps.map((sweep, k) => {
      const push = dialOf(record, made.length, k);
      const sign = push === 'fell' ? -1 : 1;
      return { ...sweep, push, readings_um: sweep.readings_um.map((um) => sign * um + 0) };
    }),
    levels,
  };
}

/** Bearing share by zone of the coming round's print, as it is seen. */
export function practicePrint(record: PracticeRecord, made: readonly MadePasses[]): Print {
  const machine = replayed(record, made);
  machine.measure();
  return machine.print();
}

/** What the machine truly was when each round was measured, the coming one last, and what went wrong on purpose. */
export function practiceTruth(record: PracticeRecord, made: readonly MadePasses[]): ShownTruth {
  const rounds: Truth[] = [];
  replayed(record, made, (machine) => {
    rounds.push(machine.truth());
  });
  // The round that is being worked has been read, but what it will slip in scraping has not happened yet.
  const slips = slipsMade(record, made).filter(
    ({ kind, round }) => round < made.length || (kind === 'sweep reversed' && round === made.length),
  );
  return { rounds, slips };
}
