import type { ZoneAnswer } from '../../core/plan/answer.ts';
import { passesOf } from './pass.ts';

/** How far a round has come, as the ledger has it. */
export interface RoundSoFar {
  readonly round: number;
  /** The job's set-ups in their order, and whether each has readings in this round. */
  readonly setups: readonly {
    readonly id: string;
    readonly kind: 'sweep' | 'level' | 'height';
    readonly taken: boolean;
  }[];
  readonly printed: boolean;
  /** The part lies on the bench: it was said which way it was turned. */
  readonly lifted: boolean;
  readonly passes_made: number;
  readonly signed: boolean;
  /** The alarm's question of this round was answered. */
  readonly settled: boolean;
}

/** What the tool says of the round, when there are readings to say it from. */
export type RoundPlan =
  | {
      readonly kind: 'plan';
      readonly action: 'scrape' | 'spot' | 'stop';
      readonly zones: readonly ZoneAnswer[];
      readonly alarm: boolean;
    }
  | { readonly kind: 'no answer' };

/** The one thing to do next, and the button's words: a verb and its object. */
export interface NextDeed {
  readonly kind:
    | 'measure'
    | 'print'
    | 'settle'
    | 'pass'
    | 'spot'
    | 'set back'
    | 'sign'
    | 'signed'
    | 'no answer';
  readonly words: string;
  /** Quiet words at the button's end: "16 zones". */
  readonly end?: string;
  readonly setup?: string;
  readonly pass?: number;
  readonly of?: number;
}

const setupVerbs = { sweep: 'Set up the sweep', level: 'Read the level', height: 'Read the height' } as const;

/**
 * The next deed of a round. Measuring comes first, then the print, unless the person has gone past them: a part that is
 * lifted will not be measured before it is set back, and one that is being scraped will not be printed. An alarm that is not settled comes before any scraping.
 */
export function nextDeed(so: RoundSoFar, plan: RoundPlan | undefined): NextDeed {
  if (so.signed) return { kind: 'signed', words: 'Show the ledger' };
  if (plan?.kind === 'plan' && plan.alarm && !so.settled)
    return { kind: 'settle', words: 'Answer the question' };
  const lifted = so.lifted || so.passes_made > 0;
  const open = lifted || so.printed ? undefined : so.setups.find((setup) => !setup.taken);
  if (open) return { kind: 'measure', words: setupVerbs[open.kind], setup: open.id };
  if (!so.printed && so.passes_made === 0)
    return { kind: 'print', words: 'Enter the print', end: 'blue by zone' };
  if (plan?.kind === 'no answer') return { kind: 'no answer', words: 'Measure again' };
  if (!plan) {
    const first = so.setups[0];
    return first
      ? { kind: 'measure', words: setupVerbs[first.kind], setup: first.id }
      : { kind: 'print', words: 'Enter the print' };
  }
  if (plan.action === 'stop' && so.passes_made === 0)
    return { kind: 'sign', words: 'Sign the lines', end: 'nothing to scrape' };
  return scraped(so, plan.action === 'spot', plan.zones);
}

function scraped(so: RoundSoFar, spot: boolean, zones: readonly ZoneAnswer[]): NextDeed {
  const passes = passesOf(zones);
  const pass = so.passes_made + 1;
  const next = passes[so.passes_made];
  if (next === undefined)
    return { kind: 'set back', words: `Set it back: start round ${so.round + 1}`, end: 'measure again' };
  const end = next.zones === 1 ? '1 zone' : `${next.zones} zones`;
  const of = passes.length;
  if (!spot) return { kind: 'pass', words: `Start pass ${pass} of ${of}`, end, pass, of };
  const how = of === 1 ? 'once over' : `${pass} of ${of}`;
  return { kind: 'spot', words: `Spot the blue, ${how}`, pass, of };
}
