import type { Machine } from './machine.ts';
import type { StepState } from './progress.ts';

/** Hours with their doubt. */
export interface Hours {
  readonly hours: number;
  /** One standard deviation. */
  readonly sd: number;
}

/** What is left to do, in hours. */
export interface Forecast {
  readonly steps: readonly { readonly id: string; readonly left: Hours }[];
  readonly left: Hours;
  readonly spent: number;
  /** This shop's hours over the usual ones, as learned from the steps that are done. */
  readonly pace: { readonly times: number; readonly sd: number };
}

/** Spread of what shops take against the usual hours, and of one step against its shop's pace, as ln; common practice. */
export const shop_sd = 0.5;
export const step_sd = 0.4;
/** Proving a step again, as a share of doing it, where the machine does not say; common practice. */
const provingShare = 0.2;
/** However much was spent, this share of a step's usual hours is still to come while it is open. */
const leastLeft = 0.15;

/**
 * Hours still to come. A shop's pace is one unknown for all steps, learned from those done (normal in its logarithm);
 * each step scatters about it.
 */
export function forecast(machine: Pick<Machine, 'steps'>, states: readonly StepState[]): Forecast {
  const byId = new Map(states.map((state) => [state.id, state]));
  const finished = machine.steps.flatMap((step) => {
    const state = byId.get(step.id)!;
    return state.status === 'done' && state.hours_spent > 0
      ? [Math.log(state.hours_spent / step.hours.likely)]
      : [];
  });
  const weight = 1 / shop_sd ** 2 + finished.length / step_sd ** 2;
  const log = finished.reduce((sum, one) => sum + one, 0) / step_sd ** 2 / weight;
  const times = Math.exp(log);
  const pace_sd = 1 / Math.sqrt(weight);

  const steps = machine.steps.map((step) => {
    const state = byId.get(step.id)!;
    const { likely, again = provingShare * likely } = step.hours;
    if (state.status === 'done') return { id: step.id, left: { hours: 0, sd: 0 }, own_sd: 0 };
    const whole = times * (state.was_done ? again : likely);
    const hours = state.was_done ? whole : Math.max(whole - state.hours_spent, leastLeft * whole);
    const own_sd = step_sd * hours;
    return { id: step.id, left: { hours, sd: Math.hypot(own_sd, pace_sd * hours) }, own_sd };
  });
  const hours = steps.reduce((sum, one) => sum + one.left.hours, 0);
  const own = Math.hypot(...steps.map((one) => one.own_sd));
  return {
    steps: steps.map(({ id, left }) => ({ id, left })),
    left: { hours, sd: Math.hypot(own, pace_sd * hours) },
    spent: states.reduce((sum, one) => sum + one.hours_spent, 0),
    pace: { times, sd: times * pace_sd },
  };
}
