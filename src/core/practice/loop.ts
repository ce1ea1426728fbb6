import { byPad } from '../body/slide.ts';
import type { Round, SteerInput } from '../observe/round.ts';
import type { PracticeMachine } from './machine.ts';
import type { PracticeTask } from './slides.ts';

/** What whoever plans decides for the coming round. */
export interface Decision {
  readonly action: 'scrape' | 'spot' | 'stop';
  /** One a zone; not looked at when stopping. */
  readonly passes: readonly number[];
}

/** A whole history: what was entered, and how it ended. */
export interface LoopEnd {
  readonly stopped: boolean;
  /** Rounds measured. */
  readonly rounds: number;
  /** Passes made on zones, spotting included. */
  readonly passes: number;
  readonly input: SteerInput;
}

/** What is entered before the first round. */
export const taskInput = (task: PracticeTask, rounds: readonly Round[] = []): SteerInput => ({
  slide: task.slide,
  features: task.features,
  targets: task.targets,
  passes: task.passes,
  film_um: task.film_um,
  rounds,
});

/** Measures, blues, asks and scrapes, round after round, until told to stop or `most` rounds are over. */
export async function runLoop(
  machine: PracticeMachine,
  task: PracticeTask,
  decide: (input: SteerInput) => Promise<Decision>,
  most: number,
): Promise<LoopEnd> {
  let rounds: Round[] = [];
  let passes = 0;
  for (let k = 0; k < most; k++) {
    const round: Round = { ...machine.measure(), print: machine.print() };
    const input = taskInput(task, [...rounds, round]);
    const decision = await decide(input);
    if (decision.action === 'stop') return { stopped: true, rounds: k + 1, passes, input };
    passes += decision.passes.reduce((sum, m) => sum + m, 0);
    const spot = decision.action === 'spot';
    (spot ? machine.spot : machine.scrape)(decision.passes);
    rounds = [...rounds, { ...round, scraped: { spot, passes: byPad(task.slide, decision.passes) } }];
  }
  return { stopped: false, rounds: most, passes, input: taskInput(task, rounds) };
}
