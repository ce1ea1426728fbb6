import { limitAmount, type NoAnswer } from '../core/plan/problem.ts';
import { told } from '../core/quantity/told.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';

/** Why no answer exists, in the units of the shop: each limit's shortfall is said anew from its number. */
export function noAnswerWords(answer: NoAnswer, system: UnitSystem): string {
  if (system === 'metric') return answer.text;
  const words = told(system);
  return answer.limits.reduce(
    (text, limit) =>
      text.replace(
        limitAmount(limit),
        words[limit.unit === 'um' ? 'size' : 'angle'](limit.short, { signed: false }),
      ),
    answer.text,
  );
}
