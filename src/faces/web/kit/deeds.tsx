import { liveEntries } from '../../../core/ledger/job.ts';
import { type KitEntry, kitDeedWords } from '../../../core/ledger/kit-ledger.ts';
import { clock, dayMonth } from '../frame/kept.tsx';
import { Mark } from '../frame/mark.tsx';
import { type OpenKit, writeKit } from '../keep/kit.ts';

/** The last thing done to the kit with its undo, and all that was done before. */
export function KitDeeds({ kit }: { readonly kit: OpenKit }) {
  const live = new Set(liveEntries(kit.entries).map((entry) => entry.id));
  const struck = new Set(
    kit.entries.flatMap((entry, i) =>
      // An undo that is itself undone strikes nothing.
      entry.kind === 'undone' && !isStruck(entry.id, kit.entries.slice(i + 1)) ? [entry.entry] : [],
    ),
  );
  const last = kit.entries.at(-1);
  if (!last) return null;
  const row = (entry: KitEntry) => {
    const isUndone = struck.has(entry.id);
    const can = !isUndone && (entry.kind === 'undone' || live.has(entry.id));
    const words = kitDeedWords(entry, kit.entries);
    return (
      <li key={entry.id} className={isUndone ? 'struck' : undefined}>
        <span className="when">
          {dayMonth(entry.at)} {clock(entry.at)}
        </span>
        <span>{words}</span>
        {can ? (
          <button
            type="button"
            className="third"
            aria-label={entry.kind === 'undone' ? `Bring it back: ${words}` : `Undo ${words}`}
            onClick={() => writeKit({ kind: 'undone', entry: entry.id })}
          >
            <Mark name="undo" size={20} />
            {entry.kind === 'undone' ? 'Bring it back' : 'Undo'}
          </button>
        ) : (
          <span />
        )}
      </li>
    );
  };
  return (
    <section aria-label="What was done to the kit">
      <h2>Last done</h2>
      <ol className="rows ledger kit-deeds" aria-live="polite">
        {row(last)}
      </ol>
      {kit.entries.length > 1 ? (
        <details className="optional">
          <summary>All that was done before</summary>
          <ol className="rows ledger kit-deeds">{kit.entries.slice(0, -1).toReversed().map(row)}</ol>
        </details>
      ) : null}
    </section>
  );
}

const isStruck = (id: string, later: readonly KitEntry[]): boolean =>
  later.some(
    (entry, i) => entry.kind === 'undone' && entry.entry === id && !isStruck(entry.id, later.slice(i + 1)),
  );
