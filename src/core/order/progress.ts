import type { Machine } from './machine.ts';
import { type Need, needsOf, orderedSteps } from './needs.ts';

/**
 * What happened to a step.
 *
 * - `begun`: taken up; nothing is decided by it.
 * - `done`: finished, and metal came off or something was set: whatever stood on its ways is open again.
 * - `proven`: measured once more and found right, nothing changed.
 * - `reopened`: it must be done again; its ways are no longer to be trusted.
 * - `worked`: hours only.
 */
export interface StepDeed {
  readonly step: string;
  readonly what: 'begun' | 'done' | 'proven' | 'reopened' | 'worked';
  readonly hours?: number;
}

/** How a step stands. */
export type StepStatus = 'ready' | 'waits' | 'done' | 'to be re-proven';

/** Why a step that was done no longer stands. */
export interface Reopening {
  /** The step that was done again, reopened, or never done. */
  readonly by: string;
  /** From there to this step, each one standing on the one before; both ends included. */
  readonly through: readonly string[];
  readonly kind: 'done again' | 'not done';
  /** Why the last of them stands on the one before it. */
  readonly why: string;
}

/** A step as it stands. */
export interface StepState {
  readonly id: string;
  readonly status: StepStatus;
  /** What it waits for; empty when it can be taken up now. A step to be re-proven may have to wait as well. */
  readonly waits_for: readonly Need[];
  /** Of a step to be re-proven: why. */
  readonly because: readonly Reopening[];
  readonly hours_spent: number;
  /** It was finished, some time. */
  readonly was_done: boolean;
  /** It was taken up, or worked on, and has not been finished since. */
  readonly begun: boolean;
}

interface Mark {
  made: number;
  proven?: number;
  hours: number;
  begun: boolean;
}

/**
 * The rebuild as it stands after what has happened so far. A step stands when it was proven after the last change of every
 * way it is made from, and the steps that made those ways stand too. A step proven again without a change takes nothing
 * with it, so what stood on it stands again.
 *
 * @param deeds  in the order they happened; a step may come again
 * @throws RangeError  a step that the machine does not have, or steps that wait for each other in a ring
 */
export function progress(machine: Pick<Machine, 'steps'>, deeds: readonly StepDeed[]): StepState[] {
  const ordered = orderedSteps(machine);
  if (!ordered.ok) throw new RangeError(`steps wait for each other: ${ordered.ring.join(' → ')}`);
  const needs = needsOf(machine);
  const marks = marksOf(machine, deeds);
  const states = new Map<string, StepState>();
  for (const id of ordered.order) {
    const { proven, hours, begun } = marks.get(id)!;
    const open = needs.get(id)!.filter((need) => !isMet(need, states));
    const because = proven === undefined ? [] : reopenings(id, proven, needs.get(id)!, marks, states);
    const was_done = proven !== undefined;
    const status: StepStatus = was_done
      ? because.length === 0
        ? 'done'
        : 'to be re-proven'
      : open.length === 0
        ? 'ready'
        : 'waits';
    const waits_for = status === 'done' ? [] : open;
    states.set(id, { id, status, waits_for, because, hours_spent: hours, was_done, begun });
  }
  return machine.steps.map((step) => states.get(step.id)!);
}

function marksOf(machine: Pick<Machine, 'steps'>, deeds: readonly StepDeed[]): Map<string, Mark> {
  const marks = new Map<string, Mark>(
    machine.steps.map(({ id }) => [id, { made: -1, hours: 0, begun: false }]),
  );
  for (const [at, { step, what, hours = 0 }] of deeds.entries()) {
    const mark = marks.get(step);
    if (!mark) throw new RangeError(`"${step}" is not a step of this machine`);
    mark.hours += hours;
    mark.begun = what === 'begun' || what === 'worked';
    if (what === 'done' || what === 'reopened') mark.made = at;
    if (what === 'reopened') delete mark.proven;
    if (what === 'done' || what === 'proven') mark.proven = at;
  }
  return marks;
}

/** What only comes first is met once it was done; what something rests on must stand. */
function isMet(need: Need, states: ReadonlyMap<string, StepState>): boolean {
  const state = states.get(need.step)!;
  return need.kind === 'rests on' ? state.status === 'done' : state.was_done;
}

function reopenings(
  id: string,
  proven: number,
  needs: readonly Need[],
  marks: ReadonlyMap<string, Mark>,
  states: ReadonlyMap<string, StepState>,
): Reopening[] {
  const found = new Map<string, Reopening>();
  for (const need of needs) {
    if (need.kind === 'comes after') continue;
    const below = states.get(need.step)!;
    const own: Omit<Reopening, 'kind'> = { by: need.step, through: [need.step, id], why: need.why };
    if (!below.was_done) found.set(need.step, { ...own, kind: 'not done' });
    else if (marks.get(need.step)!.made > proven) found.set(need.step, { ...own, kind: 'done again' });
    for (const cause of below.because)
      if (!found.has(cause.by))
        found.set(cause.by, { ...cause, through: [...cause.through, id], why: need.why });
  }
  return [...found.values()];
}
