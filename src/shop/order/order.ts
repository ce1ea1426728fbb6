import { type Forecast, forecast } from '../../core/order/forecast.ts';
import type { Machine, Step, StepPlace, StepProof } from '../../core/order/machine.ts';
import { stepOf } from '../../core/order/needs.ts';
import { progress, type StepDeed, type StepState, type StepStatus } from '../../core/order/progress.ts';

/** One step as it is shown. */
export interface StepShown {
  readonly id: string;
  readonly title: string;
  readonly status: StepStatus;
  readonly reason: string;
  /** Why it waits, or why it is open again; one sentence each. */
  readonly waits: readonly string[];
  readonly because: readonly string[];
  readonly waits_for: StepState['waits_for'];
  readonly proofs: readonly StepProof[];
  readonly cautions: readonly string[];
  /** The slide template its bench opens with. */
  readonly bench?: { readonly slide: string; readonly template: string };
  /** Where else its numbers are taken. */
  readonly opens: readonly StepPlace[];
  /** It was taken up, and has not been finished since. */
  readonly begun: boolean;
  /** It was finished, some time. */
  readonly was_done: boolean;
  readonly hours_spent: number;
  readonly hours_left: number;
  readonly hours_left_sd: number;
}

/** What `order` answers. */
export interface OrderAnswer {
  readonly ok: true;
  readonly machine: string;
  readonly title: string;
  /** Steps that can be taken up now: those ready, and those to be re-proven that wait for nothing. */
  readonly ready: readonly string[];
  readonly steps: readonly StepShown[];
  readonly forecast: Omit<Forecast, 'steps'>;
  readonly text: string;
}

/** The order of work of a machine as it stands after what was done. */
export function order(machine: Machine, deeds: readonly StepDeed[]): OrderAnswer {
  const states = progress(machine, deeds);
  const hours = forecast(machine, states);
  const ready = states.filter((one) => one.status !== 'done' && one.waits_for.length === 0);
  const steps = machine.steps.map((step, k) => shown(machine, step, states[k]!, hours.steps[k]!.left));
  const { steps: _steps, ...left } = hours;
  return {
    ok: true,
    machine: machine.id,
    title: machine.title,
    ready: ready.map((one) => one.id),
    steps,
    forecast: left,
    text: orderText(machine, states, ready),
  };
}

/** What to take up next: what is under way, else the first that can be; undefined when all stands. */
export function nextStep({ steps, ready }: Pick<OrderAnswer, 'steps' | 'ready'>): StepShown | undefined {
  const now = steps.filter((one) => ready.includes(one.id));
  return now.find((one) => one.begun) ?? now[0];
}

function shown(
  machine: Machine,
  step: Step,
  state: StepState,
  left: { hours: number; sd: number },
): StepShown {
  const title = (id: string): string => `“${stepOf(machine, id)!.title}”`;
  const wayName = (id: string): string => machine.ways.find((one) => one.id === id)!.name;
  const bodyName = (id: string): string => {
    const way = machine.ways.find((one) => one.id === id)!;
    return machine.bodies.find((one) => one.id === way.body)!.name;
  };
  const slide = machine.slides.find((one) => one.id === step.bench?.slide);
  return {
    id: step.id,
    title: step.title,
    status: state.status,
    reason: step.reason,
    waits: state.waits_for.map((need) =>
      need.kind === 'rests on'
        ? `needs ${title(need.step)}: ${bodyName(need.way!)}, ${wayName(need.way!)} (${need.why})`
        : `comes after ${title(need.step)}: ${need.why}`,
    ),
    because: state.because.map(({ by, kind, through, why }) => {
      const what = kind === 'done again' ? `${title(by)} was done again` : `${title(by)} is not done`;
      const by_way = through.slice(1, -1).map(title);
      return `${what}${by_way.length > 0 ? `, and this stands on it through ${by_way.join(', ')}` : ''} (${why})`;
    }),
    waits_for: state.waits_for,
    proofs: step.proofs,
    cautions: step.cautions,
    ...(slide ? { bench: { slide: slide.name, template: slide.template } } : {}),
    opens: step.opens ?? [],
    begun: state.begun,
    was_done: state.was_done,
    hours_spent: state.hours_spent,
    hours_left: left.hours,
    hours_left_sd: left.sd,
  };
}

function orderText(machine: Machine, states: readonly StepState[], ready: readonly StepState[]): string {
  const count = (status: StepStatus): number => states.filter((one) => one.status === status).length;
  const open = count('to be re-proven');
  if (count('done') === states.length) return `${machine.title}: every step is done and stands.`;
  const next = ready.map((one) => `“${stepOf(machine, one.id)!.title}”`).join(', ');
  const again = open > 0 ? ` ${open} to be re-proven.` : '';
  return `${machine.title}: ${count('done')} of ${states.length} steps stand.${again} Next: ${next}.`;
}
