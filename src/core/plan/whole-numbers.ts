import { poseSize } from '../body/displacement.ts';
import { doubtShare, type EveningProblem } from './evening.ts';

/** A change of the plan: one pass more or less on a run of zones of one pad. */
interface Run {
  readonly from: number;
  /** One past the last. */
  readonly to: number;
  readonly step: 1 | -1;
  /** What it does to each zone's gap and to each held feature. */
  readonly gap: Float64Array;
  readonly held: Float64Array;
}

/** Rounds of search; each ends when no change helps, which takes a handful. */
const mostTurns = 200;

/**
 * Whole passes near a plan in fractions, by descent: a pass more or less on any run of zones, alone or two runs at once,
 * as long as that lowers what (1) of evening counts. A scraper's pass scatters by a fifth, so the last hundredth of
 * the least is not worth a person's waiting; the test holds it to the solver's own whole numbers.
 */
export function wholeNumbers(problem: EveningProblem, start: readonly number[]): number[] {
  const runs = runsOf(problem);
  const passes = start.map((m, z) => Math.min(problem.most[z]!, Math.max(0, Math.round(m))));
  const score = new Score(problem, runs, passes);
  for (let turn = 0; turn < mostTurns; turn++) if (!score.improveByOne() && !score.improveByTwo()) break;
  return score.passes;
}

function runsOf(problem: EveningProblem): Run[] {
  const { settled, unit_um, padStarts } = problem;
  const count = unit_um.length;
  const effect = unit_um.map((unit, z) => {
    const move = settled.response.map((line) => line[z]! * unit);
    const along = (row: ArrayLike<number>) => {
      let sum = 0;
      for (let j = 0; j < poseSize; j++) sum += row[j]! * move[j]!;
      return sum;
    };
    const gap = settled.rows.map((row, y) => along(row) + (y === z ? unit : 0));
    return { gap, held: problem.held.map((held) => along(held.row)) };
  });
  const runs: Run[] = [];
  padStarts.slice(0, -1).forEach((first, pad) => {
    for (let from = first; from < padStarts[pad + 1]!; from++) {
      const gap = new Float64Array(count);
      const held = new Float64Array(problem.held.length);
      for (let to = from + 1; to <= padStarts[pad + 1]!; to++) {
        effect[to - 1]!.gap.forEach((part, z) => {
          gap[z]! += part;
        });
        effect[to - 1]!.held.forEach((part, k) => {
          held[k]! += part;
        });
        runs.push({ from, to, step: 1, gap: gap.slice(), held: held.slice() });
        runs.push({ from, to, step: -1, gap: gap.map((part) => -part), held: held.map((part) => -part) });
      }
    }
  });
  return runs;
}

/** Keeps gaps and features in step with the passes, and knows what a change is worth. */
class Score {
  readonly passes: number[];
  private readonly problem: EveningProblem;
  private readonly runs: readonly Run[];
  private readonly weight: Float64Array;
  private gap: Float64Array;
  private held: Float64Array;
  private cost: number;

  constructor(problem: EveningProblem, runs: readonly Run[], passes: number[]) {
    this.problem = problem;
    this.runs = runs;
    this.passes = passes;
    const mean = problem.area_mm2.reduce((sum, area) => sum + area, 0) / problem.area_mm2.length;
    this.weight = Float64Array.from(problem.area_mm2, (area) => area / mean);
    this.gap = Float64Array.from(problem.gap_um);
    this.held = Float64Array.from(problem.held, (held) => held.now);
    for (const run of runs) if (run.to === run.from + 1 && run.step === 1) this.move(run, passes[run.from]!);
    this.cost = this.costWith(undefined, undefined);
  }

  private move(run: Run, times: number): void {
    for (let z = 0; z < this.gap.length; z++) this.gap[z]! += times * run.gap[z]!;
    for (let k = 0; k < this.held.length; k++) this.held[k]! += times * run.held[k]!;
  }

  private fits(a: Run, b?: Run): boolean {
    for (let z = a.from; z < a.to; z++) {
      const m = this.passes[z]! + a.step + (b && z >= b.from && z < b.to ? b.step : 0);
      if (m < 0 || m > this.problem.most[z]!) return false;
    }
    if (b)
      for (let z = b.from; z < b.to; z++) {
        const m = this.passes[z]! + b.step + (z >= a.from && z < a.to ? a.step : 0);
        if (m < 0 || m > this.problem.most[z]!) return false;
      }
    return true;
  }

  private costWith(a: Run | undefined, b: Run | undefined): number {
    const { problem, weight, gap, passes } = this;
    const { price, pass_um, wish, gapSd_um } = problem;
    let largest = 0;
    let own = 0;
    let away = 0;
    for (let z = 0; z < gap.length; z++) {
      let g = gap[z]!;
      let m = passes[z]!;
      if (a) {
        g += a.gap[z]!;
        if (z >= a.from && z < a.to) m += a.step;
      }
      if (b) {
        g += b.gap[z]!;
        if (z >= b.from && z < b.to) m += b.step;
      }
      const size = Math.abs(g);
      own += weight[z]! * size;
      largest = Math.max(largest, size + doubtShare * gapSd_um[z]!);
      away += weight[z]! * Math.abs(m - wish[z]!);
    }
    let cost = price.pass * away + (price.own * own + price.largest * largest) / pass_um;
    for (let k = 0; k < this.held.length; k++) {
      const held = problem.held[k]!;
      const value = this.held[k]! + (a ? a.held[k]! : 0) + (b ? b.held[k]! : 0);
      cost += (price.feature / held.band) * Math.max(0, held.low - value, value - held.high);
    }
    return cost;
  }

  private take(a: Run, b: Run | undefined, cost: number): void {
    for (const run of b ? [a, b] : [a]) {
      this.move(run, 1);
      for (let z = run.from; z < run.to; z++) this.passes[z]! += run.step;
    }
    this.cost = cost;
  }

  improveByOne(): boolean {
    let best: Run | undefined;
    let least = this.cost - 1e-9;
    for (const run of this.runs) {
      if (!this.fits(run)) continue;
      const cost = this.costWith(run, undefined);
      if (cost >= least) continue;
      least = cost;
      best = run;
    }
    if (best) this.take(best, undefined, least);
    return best !== undefined;
  }

  improveByTwo(): boolean {
    const { runs } = this;
    for (let i = 0; i < runs.length; i++)
      for (let k = 0; k < i; k++) {
        const a = runs[i]!;
        const b = runs[k]!;
        if (a.step === b.step && a.from < b.to && b.from < a.to) continue;
        if (!this.fits(a, b)) continue;
        const cost = this.costWith(a, b);
        if (cost >= this.cost - 1e-9) continue;
        this.take(a, b, cost);
        return true;
      }
    return false;
  }
}
