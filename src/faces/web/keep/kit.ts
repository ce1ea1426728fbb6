import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { foldKit, type KitDeed, type KitEntry, type KitItem } from '../../../core/ledger/kit-ledger.ts';
import { outbox, useOutbox } from './jobs.ts';
import { kitParcels, newId } from './outbox.ts';
import { fetched } from './server.ts';
import { phoneShelf, shelved } from './shelf.ts';

interface KitView {
  readonly entries: readonly KitEntry[];
}

const viewKey = 'waywright/view-of-kit';

/** The kit from the shop's file, and as last seen on this phone when the shop is out of reach. */
async function kitView(): Promise<KitView> {
  try {
    const view = await fetched<KitView>('/api/kit');
    try {
      phoneShelf.write(viewKey, JSON.stringify(view));
    } catch {
      // No room to remember it for when the shop is out of reach; outbox and drafts come first.
    }
    return view;
  } catch (failure) {
    const seen =
      failure instanceof TypeError ? shelved<KitView | undefined>(phoneShelf, viewKey, undefined) : undefined;
    if (seen) return seen;
    throw failure;
  }
}

/** The workshop's kit as it stands, with what still waits on this phone counted in. */
export interface OpenKit {
  readonly entries: readonly KitEntry[];
  readonly items: readonly KitItem[];
}

export function useKit(): { readonly kit?: OpenKit; readonly failure?: Error } {
  const box = useOutbox();
  const { data: view, error } = useQuery({ queryKey: ['kit'], queryFn: kitView });
  const kit = useMemo(() => {
    if (!view) return undefined;
    const known = new Set(view.entries.map((entry) => entry.id));
    const last = view.entries.at(-1)?.seq ?? 0;
    const waiting = box.waiting
      .filter((parcel) => parcel.job === kitParcels && !known.has(parcel.entry.id))
      .map((parcel, i) => ({ ...parcel.entry, seq: last + 1 + i }) as KitEntry);
    const entries = [...view.entries, ...waiting];
    return { entries, items: foldKit(entries) };
  }, [view, box]);
  if (kit) return { kit };
  return error ? { failure: error } : {};
}

/** Writes a deed of the kit: first on this phone, then in the shop's file. */
export function writeKit(deed: KitDeed): void {
  outbox.add({ job: kitParcels, entry: { ...deed, id: newId(), at: new Date().toISOString() } });
}

/** A name for a new thing, its own for ever. */
export const newItem = newId;
