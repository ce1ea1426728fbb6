import { shop_sd, step_sd } from '../../core/order/forecast.ts';
import type { Machine } from '../../core/order/machine.ts';
import { plain } from '../../core/quantity/show.ts';
import type { Worked } from '../worked.ts';
import type { OrderAnswer } from './order.ts';

const n = (value: number): string => plain(value, 5);

/** How the hours left come about: this shop's pace from the steps done, then each open step at that pace. */
export function forecastWorking(machine: Pick<Machine, 'steps'>, answer: OrderAnswer): Worked[] {
  const usual = (id: string): number => machine.steps.find((one) => one.id === id)!.hours.likely;
  const done = answer.steps.filter((one) => one.status === 'done' && one.hours_spent > 0);
  const open = answer.steps.filter((one) => one.status !== 'done');
  const { pace, left } = answer.forecast;
  return [
    {
      what: 'pace of this shop, times the usual hours',
      formula: `exp(Σ ln(spent / usual) / ${step_sd}² / (1/${shop_sd}² + count/${step_sd}²))`,
      worked:
        done.length === 0
          ? 'no step is done: 1'
          : `${done.map((one) => `${one.id} ${n(one.hours_spent)}/${n(usual(one.id))}`).join(', ')}: ${n(pace.times)}, one sd ${n(pace.sd)}`,
      source: 'a shop’s pace as one unknown, normal in its logarithm; spreads are common practice',
    },
    ...open.map(
      (one): Worked => ({
        what: `left at ${one.id}`,
        formula: 'pace × usual − spent; to be re-proven: pace × proving it again',
        worked: `usual ${n(usual(one.id))} h, spent ${n(one.hours_spent)} h, at ${n(pace.times)}: ${n(one.hours_left)} h, one sd ${n(one.hours_left_sd)} h`,
      }),
    ),
    {
      what: 'left in all',
      formula: 'sum; the steps’ own spreads by squares, the pace’s shared by all',
      worked: `${open.map((one) => n(one.hours_left)).join(' + ') || '0'} = ${n(left.hours)} h, one sd ${n(left.sd)} h`,
    },
  ];
}
