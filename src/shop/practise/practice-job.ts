import type { Entry } from '../../core/ledger/entry.ts';
import { type Job, liveEntries } from '../../core/ledger/job.ts';
import { type RoundRecord, roundRecord } from '../../core/ledger/round-record.ts';
import type { Print } from '../../core/observe/round.ts';
import type { Truth } from '../../core/practice/machine.ts';
import type { MadePasses, PracticeRecord, SlipKind } from '../../core/practice/record.ts';
import { practicePrint, practiceReadings, practiceTruth } from '../../core/practice/replay.ts';
import { practiceSetups } from './practice-plan.ts';

/** Passes of a round added up, one number a zone. */
function passesOf(job: Pick<Job, 'plan'>, record: RoundRecord): MadePasses {
  const sum = (spot: boolean): number[] =>
    job.plan.slide.pads.flatMap((pad) =>
      Array.from({ length: pad.zones }, (_, z) =>
        record.passes.reduce(
          (all, made) => all + (made.spot === spot ? (made.zones[pad.name]?.[z] ?? 0) : 0),
          0,
        ),
      ),
    );
  return { whole: sum(false), spot: sum(true) };
}

/**
 * Passes really made in the rounds before `round`: those that counted when each of them was closed. What is put right in
 * the record after that puts right the record, not the metal.
 */
export function madeBefore(job: Pick<Job, 'plan' | 'entries' | 'live'>, round: number): MadePasses[] {
  return Array.from({ length: round - 1 }, (_, k) => {
    const closed = job.live.findLast((entry) => entry.kind === 'round closed' && entry.round === k + 1);
    const upTo = (entry: Entry): boolean => closed === undefined || entry.seq <= closed.seq;
    return passesOf(job, roundRecord(liveEntries(job.entries.filter(upTo)), k + 1));
  });
}

/** What the instrument of a set-up shows: µm at each stop of a sweep, µrad of a level; signs as the instrument has them. */
export interface InstrumentShows {
  readonly setup: string;
  /** What the number did when a finger pushed the plunger in; a level has none. */
  readonly push?: 'climbed' | 'fell';
  readonly values: readonly number[];
}

/** A practice machine measured: every set-up of its plan. */
export interface PracticeMeasured {
  readonly round: number;
  readonly repeat: number;
  readonly setups: readonly InstrumentShows[];
}

/** A practice machine blued: bearing share by pad and zone, as it is seen. */
export interface PracticePrinted {
  readonly round: number;
  readonly share: Print;
}

/** A slip that was made on purpose; rounds from 1, places by name. */
export interface SlipMade {
  readonly kind: SlipKind;
  readonly round: number;
  readonly pad?: string;
  /** From 0, at the minus end. */
  readonly zone?: number;
  readonly by_urad?: number;
}

/** What the machine truly was, round by round, each before it was scraped; the last one is the round being worked. */
export interface PracticeTruth {
  readonly rounds: readonly (Truth & { readonly round: number })[];
  readonly slips: readonly SlipMade[];
}

const tenth = (value: number): number => Math.round(value * 10) / 10 + 0;

/** Reads every set-up of a practice job in a round. A level shows whole µm/m, a sweep tenths of a µm. */
export function measurePractice(
  job: Pick<Job, 'plan' | 'entries' | 'live'>,
  record: PracticeRecord,
  round: number,
  repeat = 0,
): PracticeMeasured {
  const { sweeps, levels } = practiceReadings(record, madeBefore(job, round), repeat);
  return {
    round,
    repeat,
    setups: [
      ...sweeps.map((sweep, k) => ({
        setup: practiceSetups.sweeps[k]!,
        push: sweep.push,
        // Set to nothing at the first stop, as an indicator is.
        values: sweep.readings_um.map((um) => tenth(um - sweep.readings_um[0]!)),
      })),
      ...levels.map((level, k) => ({
        setup: practiceSetups.levels[k]!,
        values: [Math.round(level.reading_urad) + 0],
      })),
    ],
  };
}

/** Blues it and looks, to whole per cent: nobody sees finer. */
export function printPractice(
  job: Pick<Job, 'plan' | 'entries' | 'live'>,
  record: PracticeRecord,
  round: number,
): PracticePrinted {
  const print = practicePrint(record, madeBefore(job, round));
  const whole = (shares: readonly number[]) => shares.map((share) => Math.round(share * 100) / 100);
  return {
    round,
    share: Object.fromEntries(Object.entries(print).map(([pad, shares]) => [pad, whole(shares)])),
  };
}

/** The truth of a practice job up to the round that is being worked. */
export function truthOfPractice(
  job: Pick<Job, 'plan' | 'entries' | 'live' | 'round'>,
  record: PracticeRecord,
): PracticeTruth {
  const { rounds, slips } = practiceTruth(record, madeBefore(job, job.round));
  const zones = job.plan.slide.pads.flatMap((pad) =>
    Array.from({ length: pad.zones }, (_, zone) => ({ pad: pad.name, zone })),
  );
  return {
    rounds: rounds.map((truth, k) => ({ ...truth, round: k + 1 })),
    slips: slips.map((slip): SlipMade => {
      const at = { kind: slip.kind, round: slip.round + 1 };
      switch (slip.kind) {
        case 'zone missed':
          return { ...at, ...zones[slip.zone] };
        case 'pass too many': {
          const pad = job.plan.slide.pads[slip.pad]?.name;
          return pad === undefined ? at : { ...at, pad };
        }
        case 'reference moved':
          return { ...at, by_urad: slip.by_urad };
        default:
          return at;
      }
    }),
  };
}
