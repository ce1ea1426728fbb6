import type { Marking } from './marking.ts';

/** How marks stood before a step. */
export type Before = Pick<Marking, 'marks' | 'doing' | 'ends' | 'chosen' | 'point'> & {
  /** What the step did, in words; absent: a point was moved or a size changed. */
  readonly did?: string;
};

/** So many steps can be taken back; more are forgotten, the oldest first. */
const mostSteps = 30;

/**
 * A deed with the way back from it. A deed that changed nothing is no step.
 *
 * @param run  deeds of one run that follow one another are one step: a drag, presses of an arrow on one point
 */
export function step(was: Marking, now: Marking, run?: string): Marking {
  if (now.marks === was.marks && now.ends === was.ends) return now;
  const goesOn = run !== undefined && was.run === run;
  const { marks, doing, ends, chosen, point, past = [] } = was;
  const did = now.said && !now.said.refused && run === undefined ? now.said.words : undefined;
  const before: Before = {
    marks,
    ...(doing ? { doing } : {}),
    ...(ends ? { ends } : {}),
    ...(chosen === undefined ? {} : { chosen }),
    ...(point === undefined ? {} : { point }),
    ...(did === undefined ? {} : { did }),
  };
  const steps = goesOn ? past : [...past, before].slice(-mostSteps);
  const { run: _, ...rest } = now;
  return { ...rest, past: steps, ...(run === undefined ? {} : { run }) };
}

/** The last step taken back; nothing where there is none. */
export function undone(was: Marking): Marking {
  const last = was.past?.at(-1);
  if (!last) return was;
  const { did, ...before } = last;
  const words = did === undefined ? 'Undone.' : `Undone: ${lower(did)}`;
  return { ...before, past: was.past!.slice(0, -1), said: { words, refused: false } };
}

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);
