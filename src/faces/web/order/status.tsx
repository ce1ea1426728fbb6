import type { StepShown } from '../../../shop/order/order.ts';
import { statusWord } from '../../../shop/order/order-words.ts';
import { Mark } from '../frame/mark.tsx';

/** A step's state: a mark, a word, and a colour only where something is proven. */
export function StepStatus({ step }: { readonly step: StepShown }) {
  const { status, waits_for } = step;
  const mark = {
    done: 'within',
    ready: 'arrow right',
    waits: 'waiting',
    'to be re-proven': 'not proven high',
  } as const;
  const tone = status === 'done' ? 'within' : 'not-proven';
  return (
    <span className={`verdict ${tone}`} data-status={status} data-waits={waits_for.length > 0 || undefined}>
      <Mark name={mark[status]} size={20} />
      {statusWord(step)}
    </span>
  );
}
