import { solveWithHighs } from '../dist/adapters/solver/highs.js';
import { estimateSlide } from '../dist/core/estimate/estimate-slide.js';
import { featureOf, poseOfRound } from '../dist/core/estimate/pose.js';
import { planDepth } from '../dist/core/plan/depth.js';
import { planPasses } from '../dist/core/plan/passes.js';
import { planSlide } from '../dist/core/plan/plan-slide.js';
import { planProblem } from '../dist/core/plan/problem.js';
import { summary, timed } from './clock.mjs';
import { highsAlone, recording } from './highs.mjs';
import { benchInputs } from './slide.mjs';

/** The contract's problem of each saddle's first round. */
const problems = (await benchInputs(1)).map((input) => {
  const pose = poseOfRound(input.rounds[0]);
  const values = Object.fromEntries(input.features.map((f) => [f.name, featureOf(pose, f).value]));
  return planProblem(input, values, input.passes);
});

export async function depthsTiming(quick) {
  const record = recording(solveWithHighs);
  for (const problem of problems) await planDepth(problem, record.solve);
  let turn = 0;
  const work = () => planDepth(problems[turn++ % problems.length], solveWithHighs);
  return [
    {
      what: 'depths, the least volume (LP)',
      aim: 'under 10 ms',
      times: await timed(work, { seconds: quick ? 0.2 : 2 }),
      highs: highsAlone(
        record.programs.map((program) => [program]),
        quick ? 5 : 50,
      ),
    },
  ];
}

export async function passesTiming(quick) {
  const record = recording(solveWithHighs);
  const times = [];
  for (let k = 0; k < (quick ? 1 : 3); k++)
    for (const problem of problems) {
      const start = performance.now();
      await planPasses(problem, k === 0 ? record.solve : solveWithHighs);
      times.push(performance.now() - start);
    }
  return [
    {
      what: 'passes, the least whole ones (MILP)',
      aim: 'under 500 ms, never over 3 s',
      times: summary(times),
      highs: highsAlone(
        record.programs.map((program) => [program]),
        1,
      ),
    },
  ];
}

const rounds = 4;

/** What to do next after some rounds, on the state: whole passes or spotting, with the depths beside. */
export async function nextRoundTiming(quick) {
  const times = [];
  const groups = [];
  const inputs = await benchInputs(rounds);
  for (let k = 0; k < (quick ? 1 : 3); k++)
    for (const input of inputs) {
      const estimate = estimateSlide(input);
      const record = recording(solveWithHighs);
      const start = performance.now();
      await planSlide(input, estimate, record.solve);
      times.push(performance.now() - start);
      if (k === 0) groups.push(record.programs);
    }
  return [
    {
      what: `plan of a round, ${rounds} rounds known`,
      aim: 'under 500 ms, never over 3 s',
      times: summary(times),
      highs: highsAlone(groups, 1),
    },
  ];
}
