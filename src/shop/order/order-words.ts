import type { Machine } from '../../core/order/machine.ts';
import { standingOn, stepOf } from '../../core/order/needs.ts';
import type { StepStatus } from '../../core/order/progress.ts';
import { counted } from '../phrase.ts';
import type { OrderAnswer, StepShown } from './order.ts';

/** Hours as a shop says them: to the half under ten, whole beyond. */
export function hoursText(hours: number): string {
  const shown = hours < 10 ? Math.round(hours * 2) / 2 : Math.round(hours);
  return `${shown}\u00a0h`;
}

/**
 * "6 h to go (2 to 19)": hours are never below nothing, so their doubt is one of times, not of plus or minus (log-normal, the
 * hours in its middle, two sd to each side).
 */
function toGo(hours: number, sd: number): string {
  const spread = Math.exp(2 * Math.sqrt(Math.log1p((sd / hours) ** 2)));
  const bare = (one: number): string => hoursText(one).replace('\u00a0h', '');
  return `${hoursText(hours)} to go (${bare(hours / spread)} to ${bare(hours * spread)})`;
}

/** What is spent and what is left of the whole rebuild, and how this shop's pace was learned. */
export function forecastSentence({ forecast: { left, spent, pace }, steps }: OrderAnswer): string {
  const learned = steps.filter((one) => one.status === 'done' && one.hours_spent > 0).length;
  const its =
    learned === 0
      ? 'Usual hours; your own pace is learned from the hours you write.'
      : `You take ${pace.times.toFixed(1)} times the usual hours, learned from ${counted(learned, 'step')}.`;
  if (left.hours === 0) return `${hoursText(spent)} spent; nothing left to do.`;
  return `${hoursText(spent)} spent, ${toGo(left.hours, left.sd)}. ${its}`;
}

/** Hours of one step: "3 h spent, 25 h to go (9 to 70)". */
export function stepHours({ hours_spent, hours_left, hours_left_sd }: StepShown): string {
  const spent = hours_spent > 0 ? `${hoursText(hours_spent)} spent` : '';
  const left = hours_left > 0 ? toGo(hours_left, hours_left_sd) : '';
  return [spent, left].filter(Boolean).join(', ') || 'no hours written';
}

/** What a step is, in a word or two. */
export function statusWord({ status, begun, waits_for }: StepShown): string {
  const words: Record<StepStatus, string> = {
    done: 'stands',
    ready: begun ? 'under way' : 'ready',
    waits: begun ? 'under way, though it waits' : 'waits',
    'to be re-proven': waits_for.length > 0 ? 'to be re-proven, waits' : 'to be re-proven',
  };
  return words[status];
}

/** Titles of the steps that stand on this one: what metal off its faces takes back. */
export const standsOnIt = (machine: Pick<Machine, 'steps'>, step: string): string[] => {
  const above = standingOn(machine, step);
  return machine.steps.flatMap((one) => (above.has(one.id) ? [stepOf(machine, one.id)!.title] : []));
};

/** How a proof is measured, without the command line's own word for it: screens open what they name themselves. */
export const proofWith = (text: string): string =>
  text.replace(/[;,] (?:verb|sums) [\w-]+(?:, [\w-]+)*\.?$/, '');

/** The faces a step makes, in the machine's words: "bed: carriage flat". */
export const makesWords = (machine: Machine, step: string): string[] =>
  stepOf(machine, step)!.makes.map((id) => wayWords(machine, id));

/** What a step is made from, each with why. */
export const basisWords = (
  machine: Machine,
  step: string,
): { readonly from: string; readonly why: string }[] =>
  stepOf(machine, step)!.from.map((basis) => {
    if ('master' in basis) return { from: basis.master, why: basis.why };
    const way = machine.ways.find((one) => one.id === basis.way)!;
    const trusted = way.as_found === undefined ? '' : `; trusted as found: ${way.as_found}`;
    return { from: wayWords(machine, basis.way), why: `${basis.why}${trusted}` };
  });

function wayWords(machine: Machine, id: string): string {
  const way = machine.ways.find((one) => one.id === id)!;
  return `${machine.bodies.find((one) => one.id === way.body)!.name}: ${way.name}`;
}
