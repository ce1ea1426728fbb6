import { type PoseNumbers, poseSize } from '../body/displacement.ts';
import { lighterPasses } from './lighter-passes.ts';
import { type BindingLimit, limitAmount, limitUnit, type NoAnswer, type PlanProblem } from './problem.ts';
import type { Column, LinearProgram, Row, Solve } from './program.ts';

/** The least whole passes whose settled pose keeps every target in its band. */
export interface Passes {
  readonly ok: true;
  /** One a zone. */
  readonly passes: readonly number[];
  /** How the slide settles after them, µm and µrad. */
  readonly move: PoseNumbers;
  /** Σ area · passes / mean area. */
  readonly cost: number;
  /** False when time ran out and a cheaper answer may exist. */
  readonly proven: boolean;
}

/** How long the search for whole passes may take, and how near to the least is near enough. */
export interface PassesSearch {
  readonly most_s?: number;
  readonly gap?: number;
}

/** Never keep a person waiting; within one part in a hundred of the least is as good as the least. */
const usualSearch = { most_s: 2.4, gap: 0.01 };
/** Said beside a refusal: which limit gives, quickly and near enough. */
const reasonSearch = { most_s: 0.4, gap: 0.01 };
/** Dear against any passes: limits give only when they must (in passes a µm, and a band). */
const dear = { limit: 1e3, band: 1e5 };
/** More passes than this on one zone is a job for a planer. */
const mostPasses = 99;

const passName = (z: number): string => `passes ${z}`;

/**
 * The whole-number plan: the least area-weighted passes whose settled pose keeps every target in its band (less its
 * guard), with no zone left off its seat by more than one pass.
 *
 *     least Σ areaᵢ mᵢ / mean area   with   dᵢ = ρᵢ mᵢ,  q = response · d,
 *     low ≤ feature(now + q) ≤ high,   |dᵢ + n·q(pᵢ)| ≤ ρᵢ,   dᵢ ≤ stockᵢ                                        (2)
 *
 * The pose is tied to the settling, not chosen: a part takes no angle that its zones do not give it.
 */
export async function planPasses(
  problem: PlanProblem,
  solve: Solve,
  search: PassesSearch = usualSearch,
): Promise<Passes | NoAnswer> {
  const program = passesProgram(problem);
  const found = await solve({ ...program, ...search });
  if (found.kind === 'none in time')
    return {
      ok: false,
      why: 'not in time',
      limits: [],
      text: 'no whole passes were found in the time allowed',
    };
  if (found.kind !== 'found') return withoutPasses(problem, solve);
  const asFound = problem.zones.map((_, z) => found.values[passName(z)]!);
  const passes = found.proven ? asFound : lighterPasses(program, asFound);
  const depths_um = passes.map((m, z) => m * problem.pass_um[z]!);
  const move = problem.settled.response.map((line) =>
    line.reduce((sum, part, z) => sum + part * depths_um[z]!, 0),
  ) as unknown as PoseNumbers;
  return { ok: true, passes, move, cost: passesCost(problem, passes), proven: found.proven };
}

/** What binds: the same program with every limit allowed to give, at a price. */
async function withoutPasses(problem: PlanProblem, solve: Solve): Promise<NoAnswer> {
  const found = await solve({ ...passesProgram(problem, true), ...reasonSearch });
  const gave = (name: string) => (found.kind === 'found' ? found.values[name]! : 0);
  const limits = [
    ...problem.slide.pads.map(
      ({ name }, k): BindingLimit => ({
        kind: 'stock',
        name,
        short: gave(`stock gives ${k}`),
        unit: 'um',
      }),
    ),
    ...problem.sinks.map(
      ({ name }, k): BindingLimit => ({
        kind: 'sink',
        name,
        short: gave(`sink gives ${k}`),
        unit: 'um',
      }),
    ),
    ...problem.wanted.map(
      (target, k): BindingLimit => ({
        kind: 'feature',
        name: target.feature,
        short: gave(`feature gives ${k}`),
        unit: limitUnit(target),
      }),
    ),
  ].filter((limit) => limit.short > 1e-6);
  const whole = 'no whole number of passes brings every target into its band';
  if (!limits.length) return { ok: false, why: 'limits', limits, text: whole };
  return { ok: false, why: 'limits', limits, text: `${whole}: ${limits.map(limitText).join('; ')}` };
}

function limitText(limit: BindingLimit): string {
  const more = limitAmount(limit);
  if (limit.kind === 'stock') return `stock of pad "${limit.name}" is short by ${more}`;
  if (limit.kind === 'sink') return `sink limit "${limit.name}" is passed by ${more}`;
  return `feature "${limit.name}" stays ${more} outside its band, less its guard`;
}

/** Σ area · passes / mean area. */
export function passesCost(problem: PlanProblem, passes: readonly number[]): number {
  const total = problem.zones.reduce((sum, zone) => sum + zone.area_mm2, 0);
  return (
    (problem.zones.reduce((sum, zone, z) => sum + zone.area_mm2 * passes[z]!, 0) * problem.zones.length) /
    total
  );
}

/** The band that passes are planned into: each end drawn in by `guard` of the half band. */
export function guardedBand(target: { low: number; high: number; guard?: number }): {
  low: number;
  high: number;
} {
  const keep = ((target.guard ?? 0) * (target.high - target.low)) / 2;
  return { low: target.low + keep, high: target.high - keep };
}

function passesProgram(problem: PlanProblem, giving = false): LinearProgram {
  const { zones, settled, wanted, pass_um, stock_um, sinks } = problem;
  const meanArea = zones.reduce((sum, zone) => sum + zone.area_mm2, 0) / zones.length;
  // What a pass on each zone does to a row over the pose, through the settling.
  const perPass = (row: PoseNumbers): number[] =>
    zones.map((_, z) => {
      let sum = 0;
      for (let j = 0; j < poseSize; j++) sum += row[j]! * settled.response[j]![z]!;
      return sum * pass_um[z]!;
    });
  const terms = (coefficients: readonly number[]): [string, number][] =>
    coefficients.map((coefficient, z) => [passName(z), coefficient]);
  const given: Column[] = [];
  const gives = (name: string, cost: number, sign: 1 | -1): [string, number][] => {
    if (!giving) return [];
    if (!given.some((column) => column.name === name)) given.push({ name, cost, low: 0, high: Infinity });
    return [[name, sign]];
  };
  const rows: Row[] = wanted.flatMap((target, k): Row[] => {
    const band = guardedBand(target);
    const [low, high] = [band.low - target.now, band.high - target.now];
    const name = `feature ${target.feature}`;
    const moves = terms(perPass(target.row));
    if (!giving) return [{ name, terms: moves, low, high }];
    const give = (sign: 1 | -1) => gives(`feature gives ${k}`, dear.band / (target.high - target.low), sign);
    return [
      { name, terms: [...moves, ...give(1)], low, high: Infinity },
      { name, terms: [...moves, ...give(-1)], low: -Infinity, high },
    ];
  });
  zones.forEach((_, z) => {
    const gap = perPass(settled.rows[z]!);
    gap[z]! += pass_um[z]!;
    rows.push({ name: `seat ${z}`, terms: terms(gap), low: -pass_um[z]!, high: pass_um[z]! });
  });
  sinks.forEach((sink, k) => {
    const lets = gives(`sink gives ${k}`, dear.limit, 1);
    rows.push({
      name: `sink ${k}`,
      terms: [...terms(perPass(sink.row)), ...lets],
      low: -sink.most_um,
      high: Infinity,
    });
  });
  if (giving)
    zones.forEach((zone, z) => {
      if (stock_um[z] === Infinity) return;
      const more = gives(`stock gives ${zone.padIndex}`, dear.limit, -1);
      const cut: [string, number][] = [[passName(z), pass_um[z]!], ...more];
      rows.push({ name: `stock ${z}`, terms: cut, low: -Infinity, high: stock_um[z]! });
    });
  const most = (z: number) => Math.min(mostPasses, Math.floor(stock_um[z]! / pass_um[z]! + 1e-9));
  const columns = zones.map((zone, z) => ({
    name: passName(z),
    cost: zone.area_mm2 / meanArea,
    low: 0,
    high: giving ? mostPasses : most(z),
    whole: true,
  }));
  return { columns: [...columns, ...given], rows };
}
