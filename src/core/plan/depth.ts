import { type PoseNumbers, poseSize } from '../body/displacement.ts';
import {
  type BindingLimit,
  limitAmount,
  limitUnit,
  type NoAnswer,
  type PlanProblem,
  volumeOf,
} from './problem.ts';
import type { Column, LinearProgram, Row, Solve } from './program.ts';

/** The least metal that brings every aimed feature to its aim. */
export interface Depths {
  readonly ok: true;
  /** One a zone, µm, 0 or above. */
  readonly depth_um: readonly number[];
  /** How the slide moves when these depths are off, µm and µrad. */
  readonly move: PoseNumbers;
  readonly volume_mm3: number;
}

const poseNames = ['tx', 'ty', 'tz', 'wx', 'wy', 'wz'];

/**
 * The continuous plan: the least volume that brings each feature with an aim exactly to it, the others into their bands,
 * every zone still bearing.
 *
 *     least Σ areaᵢ dᵢ   with   dᵢ = −n·u(pᵢ),   0 ≤ dᵢ ≤ stockᵢ,   feature(now + u) = aim                     (1)
 *
 * The unknowns are the pose's movement u alone. With no answer, the same program is solved again with every limit allowed
 * to give, at a price, and what gave is what binds.
 */
export async function planDepth(problem: PlanProblem, solve: Solve): Promise<Depths | NoAnswer> {
  const found = await solve(depthProgram(problem, false));
  if (found.kind === 'found') return depthsFrom(problem, found.values);
  const relaxed = await solve(depthProgram(problem, true));
  if (relaxed.kind !== 'found')
    return { ok: false, why: 'not in time', limits: [], text: `the solver gave no depths (${found.kind})` };
  const limits = bindingLimits(problem, relaxed.values);
  return { ok: false, why: 'limits', limits, text: limitsText(limits) };
}

function depthsFrom(problem: PlanProblem, values: Readonly<Record<string, number>>): Depths {
  const move = poseNames.map((name) => values[name]!) as unknown as PoseNumbers;
  const depth_um = problem.settled.rows.map((row) =>
    Math.max(0, -row.reduce((sum, part, j) => sum + part * move[j]!, 0)),
  );
  return { ok: true, depth_um, move, volume_mm3: volumeOf(problem.zones, depth_um) };
}

/** Slack columns: what each limit gives, by the limit's kind and place. */
const slackNames = {
  stock: (pad: number) => `stock ${pad}`,
  sink: (limit: number) => `sink ${limit}`,
  up: (target: number) => `up ${target}`,
  down: (target: number) => `down ${target}`,
};

/** Dear against any volume a saddle has (cost is µm of mean depth): limits give only when they must; features last of all. */
const dear = { stock: 1e4, sink: 1e4, feature: 1e6 };

function depthProgram(problem: PlanProblem, giving: boolean): LinearProgram {
  const { zones, settled, wanted, stock_um, sinks } = problem;
  const total = zones.reduce((sum, zone) => sum + zone.area_mm2, 0);
  const cost = Array.from(
    { length: poseSize },
    (_, j) => -zones.reduce((sum, zone, z) => sum + (zone.area_mm2 / total) * settled.rows[z]![j]!, 0),
  );
  const columns: Column[] = poseNames.map((name, j) => ({
    name,
    cost: cost[j]!,
    low: -Infinity,
    high: Infinity,
  }));
  const slack = (name: string, price: number): [string, number] => {
    columns.push({ name, cost: price, low: 0, high: Infinity });
    return [name, 1];
  };
  const terms = (row: PoseNumbers, sign: 1 | -1): [string, number][] =>
    row.map((part, j) => [poseNames[j]!, sign * part]);

  const padSlack = problem.slide.pads.map((_, pad) =>
    giving ? [slack(slackNames.stock(pad), dear.stock)] : [],
  );
  const rows: Row[] = zones.flatMap((zone, z) => {
    const depth = terms(settled.rows[z]!, -1);
    const bearing: Row = { name: `bears ${z}`, terms: depth, low: 0, high: Infinity };
    if (stock_um[z] === Infinity) return [bearing];
    const gives = padSlack[zone.padIndex]!.map(([name]): [string, number] => [name, -1]);
    return [bearing, { name: `stock ${z}`, terms: [...depth, ...gives], low: -Infinity, high: stock_um[z]! }];
  });
  sinks.forEach((sink, k) => {
    const gives = giving ? [slack(slackNames.sink(k), dear.sink)] : [];
    rows.push({
      name: `sinks ${k}`,
      terms: [...terms(sink.row, 1), ...gives],
      low: -sink.most_um,
      high: Infinity,
    });
  });
  wanted.forEach((target, k) => {
    const low = (target.aim ?? target.low) - target.now;
    const high = (target.aim ?? target.high) - target.now;
    const up = giving ? [slack(slackNames.up(k), dear.feature)] : [];
    const down = giving ? [slack(slackNames.down(k), dear.feature)] : [];
    const lowered = down.map(([name]): [string, number] => [name, -1]);
    rows.push({ name: `feature ${k}`, terms: [...terms(target.row, 1), ...up, ...lowered], low, high });
  });
  return { columns, rows };
}

function bindingLimits(problem: PlanProblem, values: Readonly<Record<string, number>>): BindingLimit[] {
  const gave = (name: string) => values[name] ?? 0;
  const all: BindingLimit[] = [
    ...problem.slide.pads.map(
      (pad, k): BindingLimit => ({
        kind: 'stock',
        name: pad.name,
        short: gave(slackNames.stock(k)),
        unit: 'um',
      }),
    ),
    ...problem.sinks.map(
      (sink, k): BindingLimit => ({
        kind: 'sink',
        name: sink.name,
        short: gave(slackNames.sink(k)),
        unit: 'um',
      }),
    ),
    ...problem.wanted.map((target, k): BindingLimit => {
      const short = Math.max(gave(slackNames.up(k)), gave(slackNames.down(k)));
      return { kind: 'feature', name: target.feature, short, unit: limitUnit(target) };
    }),
  ];
  return all.filter((limit) => limit.short > 1e-6).sort((a, b) => b.short - a.short);
}

function limitsText(limits: readonly BindingLimit[]): string {
  const one = (limit: BindingLimit): string => {
    const more = limitAmount(limit);
    if (limit.kind === 'stock') return `stock of pad "${limit.name}" is short by ${more}`;
    if (limit.kind === 'sink') return `sink limit "${limit.name}" is passed by ${more}`;
    return `feature "${limit.name}" stays ${more} from its target; metal would have to be put on`;
  };
  return limits.length
    ? `removal alone cannot reach this: ${limits.map(one).join('; ')}`
    : 'removal alone cannot reach this';
}
