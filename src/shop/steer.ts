import { featureOf, poseOfRound } from '../core/estimate/pose.ts';
import type { SteerInput } from '../core/observe/round.ts';
import type { SteerAnswer } from '../core/plan/answer.ts';
import { featureAnswer, padSettling, zoneAnswers } from '../core/plan/answers.ts';
import { planDepth } from '../core/plan/depth.ts';
import { planPasses } from '../core/plan/passes.ts';
import { type NoAnswer, planProblem } from '../core/plan/problem.ts';
import type { Solve } from '../core/plan/program.ts';

/** How far out, how sure, where to scrape, how many passes, or stop: the whole of `steer`. */
export async function steer(input: SteerInput, solve: Solve): Promise<SteerAnswer | NoAnswer> {
  const pose = poseOfRound(input.rounds.at(-1)!);
  const values: Record<string, number> = {};
  const features = [];
  for (const feature of input.features) {
    const seen = featureOf(pose, feature);
    if (!seen) continue;
    values[feature.name] = seen.value;
    features.push(featureAnswer(feature.name, seen.value, seen.sd, input.targets));
  }
  const unseen = input.targets.find((target) => !(target.feature in values));
  if (unseen)
    return {
      ok: false,
      why: 'not seen',
      limits: [],
      text: `no sweep, level or height of the last round sees "${unseen.feature}"`,
    };
  const problem = planProblem(input, values, input.passes);
  const depths = await planDepth(problem, solve);
  if (!depths.ok) return depths;
  const passes = await planPasses(problem, solve);
  if (!passes.ok) return passes;
  return {
    ok: true,
    estimate: {
      features,
      removal: Object.entries(input.passes).map(([material, size]) => ({ material, ...size })),
      sweeps: pose.sweeps,
    },
    plan: {
      action: 'scrape',
      alignment: { verdict: 'not proven', chance: Math.min(...features.map((f) => f.chance_in_band)) },
      bearing: { verdict: 'not printed' },
      zones: zoneAnswers(problem.zones, depths.depth_um, passes.passes, passes.passes),
      volume_mm3: depths.volume_mm3,
      predicted: features.map((f) => featureAnswer(f.name, f.value, f.sd, input.targets)),
      settle_um: padSettling(input.slide, passes.move),
    },
    warnings: [],
  };
}
