import type { NoAnswer } from '../core/plan/problem.ts';
import { type RestAnswer, type RestInput, rest as restOf } from '../core/rest/rest.ts';

/** What `rest` answers; see docs/contract.md. */
export type Rested = { readonly ok: true } & Omit<RestAnswer, 'converged'>;

/** How a slide sits on what it touches, or that it does not stay there. */
export function rest(input: RestInput): Rested | NoAnswer {
  const { converged, ...answer } = restOf(input);
  if (converged) return { ok: true, ...answer };
  const { force_N, at_mm } = input.load;
  return {
    ok: false,
    why: 'not held',
    limits: [],
    text: `the load of ${force_N} N at [${at_mm.join(', ')}] mm lifts or tips the slide off its pads; expected a load that presses it onto them`,
  };
}
