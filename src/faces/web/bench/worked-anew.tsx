import { notAnswered } from '../../../shop/bench/not-answered.ts';
import { type OpenJob, useOutbox } from '../keep/jobs.ts';

/**
 * Says so when readings came in after the plan in sight was worked out. It appears after a moment only (see bench.css): most
 * answers are here before.
 */
export function WorkedAnew({ open, seq }: { readonly open: OpenJob; readonly seq: number }) {
  const { waiting } = useOutbox();
  if (!notAnswered(open.job, seq)) return null;
  const waits = waiting.some((parcel) => parcel.job === open.id);
  return (
    <p className="caution anew" role="status">
      {waits
        ? 'This plan is of before your last readings: they wait on this phone until the shop is in reach.'
        : 'This plan is of before the last readings. It is being worked out anew.'}
    </p>
  );
}
