import { type PoseNumbers, poseSize } from '../body/displacement.ts';
import type { Settling } from '../body/settle.ts';
import type { Column, LinearProgram, Row, Solve } from './program.ts';
import { wholeNumbers } from './whole-numbers.ts';

/** A feature to be held near its aim: its row over the pose, where it is, and where it should come to lie. */
export interface Held {
  readonly name: string;
  readonly row: PoseNumbers;
  readonly now: number;
  readonly low: number;
  readonly high: number;
  /** Width of the band, to weigh features alike, µrad or µm. */
  readonly band: number;
}

/**
 * What evening out asks: how many passes on each zone, so that the part rests evenly and its features near their aims.
 * All lists one a zone.
 */
export interface EveningProblem {
  readonly settled: Settling;
  readonly area_mm2: readonly number[];
  /** Mean gap at rest now, µm, plus: open; and how well it is known. */
  readonly gap_um: readonly number[];
  readonly gapSd_um: readonly number[];
  /** What one pass takes. */
  readonly unit_um: readonly number[];
  readonly most: readonly number[];
  /** Where each pad's zones begin, and one past the last. */
  readonly padStarts: readonly number[];
  /** Passes wished for without regard to evenness; going under or over costs. */
  readonly wish: readonly number[];
  readonly held: readonly Held[];
  readonly sinks: readonly { readonly row: PoseNumbers; readonly most_um: number }[];
  /** In passes over a mean zone: for a pass away from the wish; for a pass of the largest unevenness; for a zone's own. */
  readonly price: {
    readonly pass: number;
    readonly largest: number;
    readonly own: number;
    readonly feature: number;
  };
  /** Removal that unevenness is counted in, µm. */
  readonly pass_um: number;
}

export interface Evening {
  readonly passes: readonly number[];
  readonly move: PoseNumbers;
  /** Gaps at rest afterwards, µm. */
  readonly gap_um: readonly number[];
  /** Largest unevenness, mean plus its share of doubt, before and after, µm. */
  readonly before_um: number;
  readonly after_um: number;
}

/** Unevenness is judged by its mean and this share of its sd. */
export const doubtShare = 0.5;

const name = { passes: (z: number) => `m${z}`, own: (z: number) => `t${z}`, away: (z: number) => `w${z}` };

/** Largest unevenness with its doubt, µm. */
export const unevenness = (gap_um: readonly number[], sd_um: readonly number[]): number =>
  gap_um.reduce((most, gap, z) => Math.max(most, Math.abs(gap) + doubtShare * sd_um[z]!), 0);

/**
 * Whole passes that even a slide out and bring its features near their aims, least
 *
 *     Σ aᵢ |mᵢ − wishᵢ| + price · largest unevenness + Σ price · own unevenness + dear slack of features            (1)
 *
 * with gaps g = gap + unit m + A J (unit m): the pose is the settled one and nothing else. Features may leave their
 * ranges, dearly, so that an answer always exists. The solver finds the least in fractions of passes; whole numbers near
 * it are found by descent, for a search for the last hundredth takes seconds and a pass scatters by a fifth.
 */
export async function planEvening(problem: EveningProblem, solve: Solve): Promise<Evening> {
  const found = await solve(program(problem));
  const start = problem.unit_um.map((_, z) =>
    found.kind === 'found' ? (found.values[name.passes(z)] ?? 0) : problem.wish[z]!,
  );
  return after(problem, wholeNumbers(problem, start));
}

/** What comes of given passes. */
export function after(problem: EveningProblem, passes: readonly number[]): Evening {
  const { settled, unit_um } = problem;
  const move = settled.response.map((line) =>
    line.reduce((sum, part, z) => sum + part * unit_um[z]! * passes[z]!, 0),
  ) as unknown as PoseNumbers;
  const gap_um = problem.gap_um.map(
    (gap, z) =>
      gap + unit_um[z]! * passes[z]! + settled.rows[z]!.reduce((sum, part, j) => sum + part * move[j]!, 0),
  );
  return {
    passes,
    move,
    gap_um,
    before_um: unevenness(problem.gap_um, problem.gapSd_um),
    after_um: unevenness(gap_um, problem.gapSd_um),
  };
}

function program(problem: EveningProblem): LinearProgram {
  const { settled, area_mm2, gap_um, unit_um, price, pass_um } = problem;
  const count = gap_um.length;
  const meanArea = area_mm2.reduce((sum, area) => sum + area, 0) / count;
  const columns: Column[] = [];
  const rows: Row[] = [];
  const perPass = (row: PoseNumbers): number[] =>
    unit_um.map((unit, z) => {
      let sum = 0;
      for (let j = 0; j < poseSize; j++) sum += row[j]! * settled.response[j]![z]!;
      return sum * unit;
    });
  const terms = (coefficients: readonly number[], sign = 1): [string, number][] =>
    coefficients.flatMap((part, z): [string, number][] =>
      Math.abs(part) > 1e-9 ? [[name.passes(z), sign * part]] : [],
    );
  for (let z = 0; z < count; z++) {
    const weight = area_mm2[z]! / meanArea;
    const wish = problem.wish[z]!;
    const plain = wish === 0;
    columns.push({
      name: name.passes(z),
      cost: plain ? price.pass * weight : 0,
      low: 0,
      high: problem.most[z]!,
    });
    columns.push({
      name: name.own(z),
      cost: (price.own * weight) / pass_um,
      low: 0,
      high: Number.POSITIVE_INFINITY,
    });
    if (!plain) {
      columns.push({ name: name.away(z), cost: price.pass * weight, low: 0, high: Number.POSITIVE_INFINITY });
      rows.push({
        name: `over ${z}`,
        terms: [
          [name.passes(z), 1],
          [name.away(z), -1],
        ],
        low: Number.NEGATIVE_INFINITY,
        high: wish,
      });
      rows.push({
        name: `under ${z}`,
        terms: [
          [name.passes(z), 1],
          [name.away(z), 1],
        ],
        low: wish,
        high: Number.POSITIVE_INFINITY,
      });
    }
    const gap = perPass(settled.rows[z]!);
    gap[z]! += unit_um[z]!;
    for (const sign of [1, -1])
      rows.push({
        name: `own ${z} ${sign}`,
        terms: [...terms(gap, -sign), [name.own(z), 1]],
        low: sign * gap_um[z]!,
        high: Number.POSITIVE_INFINITY,
      });
    rows.push({
      name: `largest ${z}`,
      terms: [
        ['largest', 1],
        [name.own(z), -1],
      ],
      low: doubtShare * problem.gapSd_um[z]!,
      high: Number.POSITIVE_INFINITY,
    });
  }
  columns.push({ name: 'largest', cost: price.largest / pass_um, low: 0, high: Number.POSITIVE_INFINITY });
  problem.held.forEach((held, k) => {
    const slack = {
      name: `slack ${k}`,
      cost: price.feature / held.band,
      low: 0,
      high: Number.POSITIVE_INFINITY,
    };
    columns.push(slack);
    const moves = terms(perPass(held.row));
    rows.push({
      name: `at least ${k}`,
      terms: [...moves, [slack.name, 1]],
      low: held.low - held.now,
      high: Number.POSITIVE_INFINITY,
    });
    rows.push({
      name: `at most ${k}`,
      terms: [...moves, [slack.name, -1]],
      low: Number.NEGATIVE_INFINITY,
      high: held.high - held.now,
    });
  });
  problem.sinks.forEach((sink, k) => {
    rows.push({
      name: `sink ${k}`,
      terms: terms(perPass(sink.row)),
      low: -sink.most_um,
      high: Number.POSITIVE_INFINITY,
    });
  });
  return { columns, rows };
}
