import { estimateSlide } from '../../core/estimate/estimate-slide.ts';
import type { RoundEstimate } from '../../core/estimate/slide-estimate.ts';
import type { Solve } from '../../core/plan/program.ts';
import { type Decision, runLoop } from '../../core/practice/loop.ts';
import { type Fault, practiceMachine, type Truth } from '../../core/practice/machine.ts';
import type { PracticeTask } from '../../core/practice/slides.ts';
import { steerFrom } from '../steer.ts';

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
  solve: Solve,
  faults: readonly Fault[] = [],
): Promise<Turn[]> {
  const machine = practiceMachine(task, seed, faults);
  const turns: Turn[] = [];
  await runLoop(
    machine,
    task,
    async (input) => {
      const known = estimateSlide(input);
      const answer = await steerFrom(input, known, solve);
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
