import type { PoseNumbers } from '../body/displacement.ts';
import { type Feature, featureRow } from '../body/feature.ts';
import { settledPose, settling } from '../body/settle.ts';
import { byPad, type Slide, zonesOf } from '../body/slide.ts';
import { product } from '../math/gaussian.ts';
import { type Random, seededRandom } from '../math/random.ts';
import { type Height, heightRow } from '../observe/height.ts';
import { type Level, levelRow } from '../observe/level.ts';
import type { Print } from '../observe/round.ts';
import { faceColumn, faceOf, type Sweep, sweepRows } from '../observe/sweep.ts';
import { cellsOf, zoneMeans } from './cells.ts';
import { usualWear, type Wear, wornGaps } from './form.ts';
import { type Hand, scatter, spotPasses, wholePasses } from './hand.ts';
import { seatCells, type Weight } from './seat.ts';

/** What a practice machine is made of. Readings of its set-ups are left at 0. */
export interface PracticeSlide {
  readonly slide: Slide;
  readonly features: readonly Feature[];
  readonly sweeps: readonly Sweep[];
  readonly levels: readonly Level[];
  readonly heights?: readonly Height[];
  readonly weight: Weight;
  /** What a pass takes off each material: median, µm, and sd of its logarithm over scrapers. */
  readonly removal: Readonly<Record<string, { readonly median_um: number; readonly log_sd: number }>>;
  readonly film_um: number;
  readonly wear?: Wear;
}

/** Slips made on purpose; rounds count from 0, and a slip in scraping is made after that round's readings. */
export type Fault =
  | { readonly kind: 'sweep reversed'; readonly round: number; readonly sweep: number }
  | { readonly kind: 'zone missed'; readonly round: number; readonly zone: number }
  | { readonly kind: 'pass too many'; readonly round: number; readonly pad: number }
  | {
      readonly kind: 'reference moved';
      readonly round: number;
      readonly face: string;
      readonly by_urad: number;
    };

/** The truth, for judging only: whoever plans must not look. */
export interface Truth {
  /** Each feature at rest on clean ways, µrad or µm. */
  readonly features: Readonly<Record<string, number>>;
  /** Share of each zone that bears, by pad. */
  readonly bearing: Print;
  readonly bearing_share: number;
  readonly pass_um: Readonly<Record<string, number>>;
  /** Mean gap of each zone at rest, µm. */
  readonly gaps_um: readonly number[];
}

/** What the set-ups read; heights when the machine has any. */
interface Seen {
  readonly sweeps: Sweep[];
  readonly levels: Level[];
  readonly heights?: Height[];
}

/** A machine to practise on: it can be measured, blued and scraped, and its truth is hidden. */
export interface PracticeMachine {
  readonly spec: PracticeSlide;
  /**
   * All set-ups read once. `repeat` above 0 seats the part again and reads it again, with chances of its own: what is read
   * later does not hang on how often one round was read.
   */
  readonly measure: (repeat?: number) => Seen;
  readonly print: () => Print;
  /** Whole passes, one number a zone. */
  readonly scrape: (passes: readonly number[]) => void;
  /** Spotting passes on the blue of the latest print, one number a zone. */
  readonly spot: (passes: readonly number[]) => void;
  readonly truth: () => Truth;
}

/** Oil and dust lift each cell by this much, anew at each setting down, µm. */
const dirt_um = 0.3;
/** More repeats of one round than this are not told apart from the next round's. */
const repeatsARound = 100;
const filmScatter = { job: 0.12, print: 0.08 };
const shareNoise = 0.03;

/**
 * A simulated machine: fine cells, one-sided elastic contact under the part's weight, a hidden hand.
 * @param seed  the same seed makes the same machine and the same chances
 */
export function practiceMachine(
  spec: PracticeSlide,
  seed: number,
  faults: readonly Fault[] = [],
): PracticeMachine {
  const { slide } = spec;
  const zones = zonesOf(slide);
  const cells = cellsOf(slide);
  // Each kind of chance has its own stream, so that a fault changes what it touches and nothing else.
  const stream = (k: number): Random => seededRandom(seed * 16 + k);
  const [making, reading, blueing, scraping, seating] = [0, 1, 2, 3, 4].map(stream) as [
    Random,
    Random,
    Random,
    Random,
    Random,
  ];

  const wear = spec.wear ?? usualWear;
  const start: PoseNumbers = [
    0,
    0,
    0,
    ...(wear.turn_urad.map((sd) => making.normal(0, sd)) as [number, number, number]),
  ];
  const gaps = wornGaps(cells, slide.pads.length, start, wear, making);
  const hands = new Map<string, Hand>(
    Object.entries(spec.removal).map(([material, { median_um, log_sd }]) => [
      material,
      {
        pass_um: median_um * Math.exp(making.normal(0, log_sd)),
        zoneFactor: zones.map(() => 1 + making.normal(0, scatter.zone)),
      },
    ]),
  );
  const faces = new Map<string, number>();
  for (const sweep of spec.sweeps)
    if (!faces.has(faceOf(sweep))) faces.set(faceOf(sweep), making.normal(0, sweep.face_slope_sd_urad));
  const jobFilm_um = spec.film_um * (1 + making.normal(0, filmScatter.job));

  const settled = settling(slide);
  let round = 0;
  let blue: boolean[] = cells.map(() => false);
  let rested = settledPose(settled, zoneMeans(cells, gaps, zones.length));

  const faultsOf = <K extends Fault['kind']>(kind: K) =>
    faults.filter((f): f is Extract<Fault, { kind: K }> => f.kind === kind && f.round === round);
  const rest = (dirt?: Random): PoseNumbers => {
    const seen = dirt ? gaps.map((gap) => gap - dirt.normal(0, dirt_um)) : gaps;
    rested = seatCells(cells, seen, spec.weight, rested);
    return rested;
  };
  const gapsAt = (pose: PoseNumbers): number[] => cells.map((cell, c) => gaps[c]! + product(cell.row, pose));
  const shares = (touching: readonly boolean[]): number[] =>
    zoneMeans(
      cells,
      touching.map((touches) => (touches ? 1 : 0)),
      zones.length,
    );

  const measure = (repeat = 0): Seen => {
    const again = (k: number): Random =>
      seededRandom((round * repeatsARound + repeat) * 2 ** 32 + seed * 16 + k);
    const [noise, dirt] = repeat === 0 ? [reading, seating] : [again(1), again(4)];
    const pose = rest(dirt);
    const reversed = new Set(faultsOf('sweep reversed').map((fault) => fault.sweep));
    const sweeps = spec.sweeps.map((sweep, k): Sweep => {
      const rows = sweepRows(sweep);
      const column = faceColumn(sweep);
      const slope = sweep.face_slope_urad + faces.get(faceOf(sweep))!;
      const constant = noise.normal(0, 20);
      const readings_um = rows.map((row, i) => {
        const shown =
          product(row, pose) + column[i]! * slope + constant + noise.normal(0, sweep.reading_sd_um);
        return Math.round((reversed.has(k) ? -shown : shown) * 10) / 10;
      });
      return { ...sweep, readings_um };
    });
    const levels = spec.levels.map(
      (level): Level => ({
        ...level,
        reading_urad: product(levelRow(level), pose) + noise.normal(0, level.sd_urad),
      }),
    );
    const heights = spec.heights?.map(
      (height): Height => ({
        ...height,
        reading_um: product(heightRow(height), pose) + noise.normal(0, height.sd_um),
      }),
    );
    return { sweeps, levels, ...(heights ? { heights } : {}) };
  };

  const print = (): Print => {
    const film_um = jobFilm_um * (1 + blueing.normal(0, filmScatter.print));
    blue = gapsAt(rest(seating)).map((gap) => gap <= film_um);
    const read = shares(blue).map((share) => Math.min(1, Math.max(0, share + blueing.normal(0, shareNoise))));
    return byPad(slide, read);
  };

  const takeOff = (depths: ArrayLike<number>): void => {
    for (let c = 0; c < gaps.length; c++) gaps[c]! += depths[c]!;
    for (const fault of faultsOf('reference moved'))
      faces.set(fault.face, faces.get(fault.face)! + fault.by_urad);
    round++;
  };
  const madeOf = (passes: readonly number[]): number[] => {
    const missed = new Set(faultsOf('zone missed').map((fault) => fault.zone));
    const more = new Set(faultsOf('pass too many').map((fault) => fault.pad));
    return passes.map((m, z) => (missed.has(z) ? 0 : m) + (more.has(zones[z]!.padIndex) ? 1 : 0));
  };
  const byMaterial = (
    passes: readonly number[],
    work: (mine: number[], hand: Hand) => Float64Array,
  ): void => {
    const made = madeOf(passes);
    const total = new Float64Array(cells.length);
    for (const [material, hand] of hands) {
      const mine = made.map((m, z) => (zones[z]!.pad.material === material ? m : 0));
      work(mine, hand).forEach((depth, c) => {
        total[c]! += depth;
      });
    }
    takeOff(total);
  };

  return {
    spec,
    measure,
    print,
    scrape: (passes) => byMaterial(passes, (mine, hand) => wholePasses(cells, gaps, mine, hand, scraping)),
    spot: (passes) => byMaterial(passes, (mine, hand) => spotPasses(cells, blue, mine, hand, scraping)),
    truth: () => {
      const pose = rest();
      const at = gapsAt(pose);
      const bears = at.map((gap) => gap <= jobFilm_um);
      const bearing = shares(bears);
      const area = zones.reduce((sum, zone) => sum + zone.area_mm2, 0);
      return {
        features: Object.fromEntries(
          spec.features.map((feature) => [feature.name, product(featureRow(feature), pose)]),
        ),
        bearing: byPad(slide, bearing),
        bearing_share: bearing.reduce((sum, share, z) => sum + share * zones[z]!.area_mm2, 0) / area,
        pass_um: Object.fromEntries([...hands].map(([material, hand]) => [material, hand.pass_um])),
        gaps_um: zoneMeans(cells, at, zones.length),
      };
    },
  };
}
