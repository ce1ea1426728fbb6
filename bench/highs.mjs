import loadHighs from 'highs';
import { lpText } from '../dist/adapters/solver/lp-text.js';
import { summary } from './clock.mjs';

export const highs = await loadHighs();

/** A `Solve` that keeps every program it is handed. */
export function recording(solve) {
  const programs = [];
  return {
    programs,
    solve: (program) => {
      programs.push(program);
      return solve(program);
    },
  };
}

/**
 * HiGHS' own time on programs: from text to answer, nothing of ours in it.
 * @param groups  programs that one piece of work solves: their times are added up
 */
export function highsAlone(groups, repeats) {
  const asked = groups.map((programs) =>
    programs.map((program) => [
      lpText(program),
      {
        output_flag: false,
        ...(program.most_s === undefined ? {} : { time_limit: program.most_s }),
        ...(program.gap === undefined ? {} : { mip_rel_gap: program.gap }),
      },
    ]),
  );
  const times = [];
  for (let k = 0; k < repeats; k++)
    for (const group of asked) {
      const start = performance.now();
      for (const [text, options] of group) highs.solve(text, options);
      times.push(performance.now() - start);
    }
  return summary(times);
}
