import highsModule, { type Highs } from 'highs';
import type { LinearProgram, Solution, Solve } from '../../core/plan/program.ts';
import { lpText } from './lp-text.ts';

// The package's types describe its CommonJS build, where the loader is `default`; the module build exports the loader itself.
const loadHighs = highsModule as unknown as (typeof highsModule)['default'];

let loaded: Promise<Highs> | undefined;

/** Statuses with which HiGHS may still hand over its best answer so far. */
const ranOut = new Set(['Time limit reached', 'Iteration limit reached', 'Target for objective reached']);

/**
 * Solves with HiGHS (WebAssembly). The call blocks its thread while it works, so faces run it in a worker.
 * One instance is loaded and kept; each solve starts from a fresh model, so a failed one does not spoil the next.
 */
export const solveWithHighs: Solve = async (program) => {
  loaded ??= loadHighs();
  return solved(await loaded, program);
};

function solved(highs: Highs, program: LinearProgram): Solution {
  const answer = highs.solve(lpText(program), {
    output_flag: false,
    ...(program.most_s === undefined ? {} : { time_limit: program.most_s }),
    ...(program.gap === undefined ? {} : { mip_rel_gap: program.gap }),
  });
  const status = answer.Status;
  if (status === 'Infeasible') return { kind: 'infeasible' };
  if (status === 'Unbounded' || status === 'Primal infeasible or unbounded') return { kind: 'unbounded' };
  if (status === 'Empty') return { kind: 'found', cost: 0, values: {}, proven: true };
  if (status !== 'Optimal' && !ranOut.has(status)) throw new Error(`the solver stopped with "${status}"`);
  const values: Record<string, number> = {};
  for (const [i, column] of program.columns.entries()) {
    const found = answer.Columns[`x${i}`];
    const primal = found && 'Primal' in found ? Number(found.Primal) : Number.NaN;
    // A column that stands in no row and no cost is not in the text's model.
    const value = found === undefined ? Math.min(Math.max(0, column.low), column.high) : primal;
    if (!Number.isFinite(value)) return { kind: 'none in time' };
    values[column.name] = column.whole ? Math.round(value) : value;
  }
  if (status !== 'Optimal' && !holds(program, values)) return { kind: 'none in time' };
  return { kind: 'found', cost: answer.ObjectiveValue, values, proven: status === 'Optimal' };
}

/** Whether values meet every row, to a millionth: a solver out of time may hand over a point that does not. */
function holds(program: LinearProgram, values: Readonly<Record<string, number>>): boolean {
  return program.rows.every((row) => {
    const sum = row.terms.reduce((total, [name, coefficient]) => total + coefficient * values[name]!, 0);
    const slack = 1e-6 * Math.max(1, Math.abs(sum));
    return sum >= row.low - slack && sum <= row.high + slack;
  });
}
