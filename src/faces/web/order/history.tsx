import { stepRecords } from '../../../core/ledger/rebuild-record.ts';
import { hoursText } from '../../../shop/order/order-words.ts';
import { clock, dayMonth } from '../frame/kept.tsx';
import { useWrite } from '../keep/jobs.ts';
import type { OpenMachine } from './whole.tsx';

const words = {
  begun: 'begun',
  done: 'done, metal off or something set',
  proven: 'proven again, nothing changed',
  reopened: 'open again',
  worked: 'worked on',
} as const;

/** What was told of a step, newest first; each can be undone. */
export function StepHistory({ open, step }: { readonly open: OpenMachine; readonly step: string }) {
  const write = useWrite(open.id);
  const told = stepRecords(open.job.live).filter((one) => one.step === step);
  if (told.length === 0) return null;
  return (
    <section>
      <h2>So far</h2>
      <ol className="rows order-history">
        {told.toReversed().map((one) => (
          <li key={one.entry}>
            <span className="when">
              {dayMonth(one.at)} {clock(one.at)}
            </span>
            <span>
              {words[one.what]}
              {one.hours === undefined ? '' : `, ${hoursText(one.hours)}`}
              {one.note === undefined ? null : <small>{one.note}</small>}
            </span>
            <button
              type="button"
              className="third"
              onClick={() => write({ kind: 'undone', entry: one.entry })}
            >
              Undo<span className="hidden"> {words[one.what]}</span>
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}
