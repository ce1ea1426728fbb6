import { Link } from 'wouter';
import { entryWords } from '../../../shop/entry-words.ts';
import { capital } from '../../../shop/phrase.ts';
import { JobScreen } from '../frame/job-screen.tsx';
import { clock, dayMonth } from '../frame/kept.tsx';
import { RefusedParcels } from '../frame/refused-parcels.tsx';
import { type OpenJob, useOutbox, useWrite } from '../keep/jobs.ts';
import { ExportJob } from './export-job.tsx';

/** All that was done, newest first; any of it can be undone, and an undo undone. */
export const LedgerScreen = ({ id }: { readonly id: string }) => (
  <JobScreen id={id}>{(open) => <Ledger open={open} />}</JobScreen>
);

function Ledger({ open }: { readonly open: OpenJob }) {
  const { id, job } = open;
  const write = useWrite(id);
  const box = useOutbox();
  const counts = new Set(job.live.map((entry) => entry.id));
  const struck = new Set(
    job.entries.flatMap((entry) =>
      entry.kind === 'undone' && effective(entry.id, job.entries) ? [entry.entry] : [],
    ),
  );
  const waiting = new Set(box.waiting.map((parcel) => parcel.entry.id));
  return (
    <main className="page narrow">
      <p className="say">
        All that was done, newest first. Undoing is an entry too, so nothing is ever lost.
      </p>
      <ExportJob id={id} job={job} />
      <RefusedParcels refused={box.refused} />
      <ol className="rows ledger">
        {job.entries.toReversed().map((entry) => {
          const undone = struck.has(entry.id);
          const undo = entry.kind === 'undone';
          const begins = entry.kind === 'job made' || entry.kind === 'practice begun';
          const can = !begins && !undone && (undo || counts.has(entry.id));
          return (
            <li key={entry.id} className={undone ? 'struck' : ''}>
              <span className="when">
                {'round' in entry && entry.round !== undefined ? `R${entry.round}, ` : ''}
                {dayMonth(entry.at)} {clock(entry.at)}
              </span>
              <span>
                {capital(entryWords(entry, job.plan, job.entries))}
                {undone ? ' (undone)' : ''}
                {waiting.has(entry.id) ? ' (on this phone)' : ''}
              </span>
              {can ? (
                <button
                  type="button"
                  className="third"
                  onClick={() => write({ kind: 'undone', entry: entry.id })}
                >
                  {undo ? 'Bring it back' : 'Undo'}
                  <span className="hidden"> {entryWords(entry, job.plan, job.entries)}</span>
                </button>
              ) : (
                <span />
              )}
            </li>
          );
        })}
      </ol>
      <Link className="third" href="/workshop">
        Where it is kept, and the last backup
      </Link>
    </main>
  );
}

/** An undo that was not itself undone. */
function effective(id: string, entries: readonly { readonly id: string; readonly kind: string }[]): boolean {
  const later = entries.slice(entries.findIndex((entry) => entry.id === id) + 1);
  return !later.some(
    (entry) =>
      entry.kind === 'undone' && 'entry' in entry && entry.entry === id && effective(entry.id, entries),
  );
}
