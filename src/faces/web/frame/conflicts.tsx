import { useMemo } from 'react';
import { conflicts } from '../../../core/ledger/conflicts.ts';
import { conflictWords } from '../../../shop/conflict-words.ts';
import { type OpenJob, useWrite } from '../keep/jobs.ts';
import { clock } from './kept.tsx';
import { Wrong } from './notice.tsx';

/** What two hands wrote without knowing of each other, on every screen of the job until a person has chosen. */
export function Conflicts({ open: { id, job } }: { readonly open: OpenJob }) {
  const found = useMemo(() => conflicts(job.live), [job]);
  const write = useWrite(id);
  if (found.length === 0) return null;
  return (
    <section className="page narrow conflicts" aria-label="Written without knowing of each other">
      {found.map((conflict) => {
        const { say, choices } = conflictWords(conflict, job.plan, job.entries);
        return (
          <div key={conflict.about} className="conflict">
            <Wrong role="alert">{say}</Wrong>
            {choices.map(({ entry, words, strikes }) => (
              <div key={entry.id} className="device-row">
                <span>
                  {words} <span className="quiet nb">written {clock(entry.at)}</span>
                </span>
                <button
                  type="button"
                  className="second"
                  onClick={() => {
                    for (const one of strikes) write({ kind: 'undone', entry: one });
                  }}
                >
                  This one stands<span className="hidden">: {words}</span>
                </button>
              </div>
            ))}
          </div>
        );
      })}
    </section>
  );
}
