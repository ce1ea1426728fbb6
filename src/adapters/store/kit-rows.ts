import type { SentKitEntry } from '../../contract/kit-entry.ts';
import { storedKitEntry } from '../../contract/kit-entry.ts';
import { BadInput } from '../../contract/refusal.ts';
import type { KitEntry } from '../../core/ledger/kit-ledger.ts';
import { Fault, type Kept } from '../../shop/store.ts';
import type { Tables } from './tables.ts';
import { type Books, rows, type Work } from './work.ts';

type Row = Tables['kit_entry'];

const deedOf = (entry: SentKitEntry | KitEntry): string => {
  const { id: _id, at: _at, seq: _seq, ...deed } = entry as KitEntry;
  return JSON.stringify(deed);
};

function entryOf(row: Row): KitEntry {
  try {
    return storedKitEntry({ ...JSON.parse(row.deed), id: row.id, at: row.at, seq: row.seq });
  } catch (failure) {
    if (!(failure instanceof BadInput || failure instanceof SyntaxError)) throw failure;
    throw new Fault(
      'damaged',
      `entry ${row.seq} of the kit cannot be read (${failure.message}); keep the file, and bring the kit in from its last export`,
    );
  }
}

/** The kit's ledger in order. */
export function* kitEntries({ db }: Books): Work<KitEntry[]> {
  return (yield* rows(db.selectFrom('kit_entry').selectAll().orderBy('seq'))).map(entryOf);
}

/** Appends entries, all or none; those that are there already stay as they are, another under the same id is a conflict. */
export function* appendKit({ db, hold }: Books, entries: readonly SentKitEntry[]): Work<Kept> {
  yield* hold('kit');
  const there = yield* rows(db.selectFrom('kit_entry').selectAll().orderBy('seq'));
  const known = new Map(there.map((row) => [row.id, row]));
  const isOther = (entry: SentKitEntry): boolean => {
    const row = known.get(entry.id);
    return row !== undefined && (row.at !== entry.at || row.deed !== deedOf(entry));
  };
  if (entries.some(isOther)) return { kind: 'conflict' };
  let seq = there.at(-1)?.seq ?? 0;
  let last = seq;
  const fresh = entries.filter((entry) => !known.has(entry.id));
  for (const entry of fresh) {
    seq += 1;
    last = seq;
    yield* rows(
      db
        .insertInto('kit_entry')
        .values({ seq, id: entry.id, at: entry.at, kind: entry.kind, deed: deedOf(entry) }),
    );
  }
  const only = entries.length === 1 ? known.get(entries[0]!.id)?.seq : undefined;
  return { kind: 'kept', seq: only ?? last, again: fresh.length === 0 };
}
