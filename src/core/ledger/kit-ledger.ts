import type { Instrument, Kit, Reference } from '../kit/kit.ts';
import { liveEntries } from './job.ts';

/** One thing of the kit. */
export type KitThing = Instrument | Reference;

/** What was done to the workshop's kit. */
export type KitDeed =
  /** Added, or changed when there is a thing under this item already; the old one stays in the ledger. */
  | { readonly kind: 'put'; readonly item: string; readonly thing: KitThing }
  | { readonly kind: 'taken out'; readonly item: string }
  /** Undo is an entry: the named entry no longer counts. Undoing an undo brings it back. */
  | { readonly kind: 'undone'; readonly entry: string };

/** A deed with its place in the kit's ledger; id and time are told by whoever wrote it, the place by the store. */
export type KitEntry = KitDeed & { readonly id: string; readonly at: string; readonly seq: number };

/** A thing of the kit as it stands, in the order things were first added. */
export interface KitItem {
  readonly item: string;
  readonly thing: KitThing;
}

export const isReference = (thing: KitThing): thing is Reference => 'known' in thing;

/** The kit's things from its ledger, undone entries left out. @param entries  in any order; their seq puts them in order */
export function foldKit(entries: readonly KitEntry[]): readonly KitItem[] {
  const things = new Map<string, KitThing>();
  for (const entry of liveEntries([...entries].sort((a, b) => a.seq - b.seq)))
    if (entry.kind === 'put') things.set(entry.item, entry.thing);
    else if (entry.kind === 'taken out') things.delete(entry.item);
  return [...things].map(([item, thing]) => ({ item, thing }));
}

/** The kit as sums take it: names tell its things apart, so a name that two phones gave is numbered. */
export function kitOf(items: readonly KitItem[]): Kit {
  const used = new Set<string>();
  const things = items.map(({ thing }) => {
    let { name } = thing;
    for (let count = 2; used.has(name); count++) name = `${thing.name} (${count})`;
    used.add(name);
    return { ...thing, name };
  });
  return {
    instruments: things.filter((thing) => !isReference(thing)) as Instrument[],
    references: things.filter(isReference),
  };
}

/** What was done in an entry: "added dial", "changed dial", "took out dial", "undone: added dial". */
export function kitDeedWords(entry: KitEntry, entries: readonly KitEntry[]): string {
  const before = entries.filter((one) => one.seq < entry.seq);
  const named = (item: string): string => {
    const last = before.findLast((one) => one.kind === 'put' && one.item === item);
    return last?.kind === 'put' ? last.thing.name : 'a thing';
  };
  if (entry.kind === 'put') {
    const had = before.some((one) => one.kind === 'put' && one.item === entry.item);
    return `${had ? 'changed' : 'added'} ${entry.thing.name}`;
  }
  if (entry.kind === 'taken out') return `took out ${named(entry.item)}`;
  const struck = entries.find((one) => one.id === entry.entry);
  return struck ? `undone: ${kitDeedWords(struck, entries)}` : 'undone: an entry that is not here';
}
