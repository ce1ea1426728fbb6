import type { Deed, Written } from '../../../core/ledger/entry.ts';
import type { KitDeed } from '../../../core/ledger/kit-ledger.ts';
import { type Shelf, shelved } from './shelf.ts';

/** Where deeds of the workshop's kit go: no job can be called so. */
export const kitParcels = 'the kit';

/** A deed on its way to the shop's file: of a job, or of the kit. */
export interface Parcel {
  readonly job: string;
  readonly entry: (Deed | KitDeed) & { readonly id: string; readonly at: string; readonly written?: Written };
}

/** What came of handing a parcel over: kept; out of reach (try again); or refused, with the words for it. */
export type Delivery =
  | { readonly kind: 'kept'; readonly seq: number }
  | { readonly kind: 'out of reach' }
  | { readonly kind: 'cannot keep'; readonly why: string }
  | { readonly kind: 'refused'; readonly why: string };

/** A parcel that the shop would not take; it stays on this phone until the person lets it go. */
export interface Refused extends Parcel {
  readonly why: string;
}

export interface OutboxState {
  readonly waiting: readonly Parcel[];
  readonly refused: readonly Refused[];
  /** Why the shop cannot keep anything just now ("the disk is full"), if it said so. */
  readonly trouble?: string;
  /** When the shop last took a parcel of each job, ISO. */
  readonly kept: Readonly<Record<string, string>>;
}

const waitingKeys = 'waywright/outbox/';
const refusedKeys = 'waywright/refused/';

/** UUID version 4. crypto.randomUUID is missing on plain http addresses, which is how a phone reaches the shop. */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6]! & 0x0f) | 0x40;
  bytes[8] = (bytes[8]! & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return [8, 12, 16, 20].reduceRight((text, at) => `${text.slice(0, at)}-${text.slice(at)}`, hex);
}

/**
 * Entries that are written but not yet acknowledged. Each lies under a key of its own (two open pages cannot overwrite
 * each other's), in the order they were made, and leaves only when the shop says that it is durable. Sending one twice is
 * harmless: its id was made here.
 */
export class Outbox {
  readonly #shelf: Shelf;
  readonly #send: (parcel: Parcel) => Promise<Delivery>;
  readonly #listeners = new Set<() => void>();
  #state: OutboxState;
  #delivering: Promise<void> | undefined;
  #count = 0;

  constructor(shelf: Shelf, send: (parcel: Parcel) => Promise<Delivery>) {
    this.#shelf = shelf;
    this.#send = send;
    this.#state = { ...this.#onShelf(), kept: {} };
  }

  readonly state = (): OutboxState => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Writes a parcel down on this phone, then tries to deliver. @throws when the phone has no room for it */
  add(parcel: Parcel): void {
    this.#count += 1;
    // The time and a counter first, so that keys sort in the order of making.
    const order = `${String(Date.now()).padStart(14, '0')}-${String(this.#count).padStart(6, '0')}`;
    this.#shelf.write(`${waitingKeys}${order}-${parcel.entry.id}`, JSON.stringify(parcel));
    this.#tell({});
    void this.deliver();
  }

  /** Hands over what waits, one after the other, until it is all kept or the shop is out of reach. */
  deliver(): Promise<void> {
    this.#delivering ??= this.#run().finally(() => {
      this.#delivering = undefined;
    });
    return this.#delivering;
  }

  /** Lets a refused parcel go: the person has read why. */
  letGo(id: string): void {
    for (const key of this.#shelf.keys())
      if (key.startsWith(refusedKeys) && key.endsWith(id)) this.#shelf.drop(key);
    this.#tell({});
  }

  /** Looks at the shelf again: another page may have delivered. */
  readonly lookAgain = (): void => this.#tell({});

  async #run(): Promise<void> {
    for (;;) {
      const key = this.#waitingNow()[0];
      if (key === undefined) return;
      const parcel = shelved<Parcel | undefined>(this.#shelf, key, undefined);
      if (parcel === undefined) {
        this.#shelf.drop(key);
        continue;
      }
      const delivery = await this.#send(parcel);
      if (delivery.kind === 'out of reach') return this.#tell({});
      if (delivery.kind === 'cannot keep') return this.#tell({ trouble: delivery.why });
      if (delivery.kind === 'refused')
        this.#shelf.write(
          `${refusedKeys}${parcel.entry.id}`,
          JSON.stringify({ ...parcel, why: delivery.why } satisfies Refused),
        );
      this.#shelf.drop(key);
      this.#tell(delivery.kind === 'kept' ? { kept: parcel } : {});
    }
  }

  #waitingNow(): string[] {
    return this.#shelf
      .keys()
      .filter((key) => key.startsWith(waitingKeys))
      .sort();
  }

  #onShelf(): Pick<OutboxState, 'waiting' | 'refused'> {
    const read = <T>(keys: readonly string[]) =>
      keys.flatMap((key) => shelved<T | undefined>(this.#shelf, key, undefined) ?? []) as T[];
    return {
      waiting: read<Parcel>(this.#waitingNow()),
      refused: read<Refused>(this.#shelf.keys().filter((key) => key.startsWith(refusedKeys))),
    };
  }

  #tell(news: { readonly trouble?: string; readonly kept?: Parcel }): void {
    const kept = news.kept
      ? { ...this.#state.kept, [news.kept.job]: new Date().toISOString() }
      : this.#state.kept;
    this.#state = {
      ...this.#onShelf(),
      kept,
      ...(news.trouble === undefined ? {} : { trouble: news.trouble }),
    };
    for (const listener of this.#listeners) listener();
  }
}
