import type { SlidePlan, Warning } from './answer.ts';

/** What to do next with a slide, as planned from the estimate, before anything else has looked at it. */
export type Plan = { readonly ok: true; readonly warnings: readonly Warning[] } & SlidePlan;
