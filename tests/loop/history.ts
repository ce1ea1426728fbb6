import { solveWithHighs } from '../../src/adapters/solver/highs.ts';
import { estimateSlide } from '../../src/core/estimate/estimate-slide.ts';
import type { RoundEstimate } from '../../src/core/estimate/slide-estimate.ts';
import { type Decision, runLoop } from '../../src/core/practice/loop.ts';
import { type Fault, practiceMachine, type Truth } from '../../src/core/practice/machine.ts';
import type { PracticeTask } from '../../src/core/practice/slides.ts';
import { steerFrom } from '../../src/shop/steer.ts';

/** One round of a job on a practice machine: what was known after it, what was so, what was decided. */
export interface Turn {
  readonly known: RoundEstimate;
  readonly truth: Truth;
  readonly decision: Decision;
}

/** Steers a practice machine until it is told to stop or `most` rounds are over, and keeps every round beside its truth. */
export async function turnsOf(
  task: PracticeTask,
  seed: number,
  most: number,
  faults: readonly Fault[] = [],
): Promise<Turn[]> {
  const machine = practiceMachine(task, seed, faults);
  const turns: Turn[] = [];
  await runLoop(
    machine,
    task,
    async (input) => {
      const known = estimateSlide(input);
      const answer = await steerFrom(input, known, solveWithHighs);
      if (!answer.ok) throw new Error(`seed ${seed}: ${answer.text}`);
      const passes = answer.plan.zones.map((zone) => zone.passes_now);
      const decision = { action: answer.plan.action, passes };
      turns.push({ known: known.rounds.at(-1)!, truth: machine.truth(), decision });
      return decision;
    },
    most,
  );
  return turns;
}
