import { seededRandom } from '../math/random.ts';
import { usualWear, type Wear } from './form.ts';
import type { Fault } from './machine.ts';
import { type PracticeMaterial, type PracticeTask, practiceSlides } from './slides.ts';

/** How hard a practice machine is: how far worn, and how often an indicator counts the other way. */
export const practiceLevels = ['easy', 'usual', 'hard'] as const;
export type PracticeLevel = (typeof practiceLevels)[number];

/** Slips that can be asked for; "surprise" lets the seed choose one of them, or none. */
export const slipKinds = ['sweep reversed', 'reference moved', 'zone missed', 'pass too many'] as const;
export type SlipKind = (typeof slipKinds)[number];
export type AskedSlip = SlipKind | 'surprise';

/** All that a practice machine is made from. The truth follows from it, and is not in it. */
export interface PracticeRecord {
  readonly slide: string;
  readonly material: PracticeMaterial;
  readonly level: PracticeLevel;
  /** The same number is the same machine. */
  readonly seed: number;
  /** Slips to be made, their rounds and places left to the seed; empty for none. */
  readonly slips: readonly AskedSlip[];
}

/** Passes really made in a round, one number a zone. */
export interface MadePasses {
  readonly whole: readonly number[];
  readonly spot: readonly number[];
}

/** Largest seed: its streams must not run into another's. */
export const mostSeed = 2 ** 27;

const levels: Readonly<Record<PracticeLevel, { readonly wear: number; readonly turned: number }>> = {
  easy: { wear: 0.5, turned: 0 },
  usual: { wear: 1, turned: 0.25 },
  hard: { wear: 1.6, turned: 0.5 },
};

/** A slip comes in one of the first three rounds. */
const slipRounds = 3;
/** A reference that moves does so by this, µrad. */
const moved_urad = 40;

/** Chances that are not the machine's own: one stream for each use, apart from the machine's. */
const chances = (seed: number, use: number, place: number) =>
  seededRandom((place + 1) * 2 ** 32 + seed * 16 + use);
const use = { dial: 8, slip: 9 };

const timesWear = (wear: Wear, by: number): Wear => ({
  turn_urad: wear.turn_urad.map((sd) => sd * by) as unknown as Wear['turn_urad'],
  bow_um: wear.bow_um * by,
  cubic_um: wear.cubic_um * by,
  wave_um: wear.wave_um * by,
  across_um: wear.across_um * by,
  cell_um: wear.cell_um,
});

/** What is practised on, with what is asked of it. @throws RangeError  no such practice slide */
export function practiceTask(record: Pick<PracticeRecord, 'slide' | 'material' | 'level'>): PracticeTask {
  const make = Object.hasOwn(practiceSlides, record.slide) ? practiceSlides[record.slide] : undefined;
  if (!make)
    throw new RangeError(
      `practice slide ${JSON.stringify(record.slide)}; expected one of ${Object.keys(practiceSlides).join(', ')}`,
    );
  return { ...make(record.material), wear: timesWear(usualWear, levels[record.level].wear) };
}

/**
 * Which way the indicator of a sweep counts in a round when its plunger is pushed in. It is set up anew each round, and may
 * be another one. With "fell" it shows every reading with its sign turned.
 */
export function dialOf(record: PracticeRecord, round: number, sweep: number): 'climbed' | 'fell' {
  const random = chances(record.seed, use.dial, round * 16 + sweep);
  return random.even() < levels[record.level].turned ? 'fell' : 'climbed';
}

const total = (made: MadePasses): number[] => made.whole.map((m, z) => m + made.spot[z]!);

/**
 * The slips that are made, rounds counted from 0: each in the round its seed drew, or in the first after it that gives it
 * room (a zone is only missed where one was to be scraped).
 *
 * @param made  passes of the rounds that are over
 */
export function slipsMade(record: PracticeRecord, made: readonly MadePasses[]): Fault[] {
  const { pads } = practiceTask(record).slide;
  return record.slips.flatMap((asked, k): Fault[] => {
    const random = chances(record.seed, use.slip, k);
    const from = Math.floor(random.even() * slipRounds);
    const which = Math.floor(random.even() * (slipKinds.length + 1));
    const draw = random.even();
    const kind = asked === 'surprise' ? slipKinds[which] : asked;
    const first = (fits: (passes: MadePasses) => boolean) =>
      made.findIndex((passes, round) => round >= from && fits(passes));
    switch (kind) {
      case 'sweep reversed':
        return [{ kind, round: from, sweep: 0 }];
      case 'reference moved':
        return [{ kind, round: from, face: 'square', by_urad: draw < 0.5 ? moved_urad : -moved_urad }];
      case 'zone missed': {
        const round = first((passes) => total(passes).some((m) => m > 0));
        if (round < 0) return [];
        const passes = total(made[round]!);
        return [{ kind, round, zone: passes.indexOf(Math.max(...passes)) }];
      }
      case 'pass too many': {
        const round = first((passes) => passes.whole.some((m) => m > 0));
        return round < 0 ? [] : [{ kind, round, pad: Math.floor(draw * pads.length) }];
      }
      default:
        return [];
    }
  });
}
