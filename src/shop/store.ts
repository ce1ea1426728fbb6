import type { SentEntry } from '../contract/entry.ts';
import type { SentKitEntry } from '../contract/kit-entry.ts';
import type { Entry } from '../core/ledger/entry.ts';
import type { KitEntry } from '../core/ledger/kit-ledger.ts';

/** A job in a list, without its ledger. */
export interface JobLine {
  readonly id: string;
  readonly entries: number;
  /** The last entry's id: with their count it names the ledger as it stands, for entries are only ever added. */
  readonly last: string;
  /** The last entry's own time. */
  readonly changed: string;
}

/** What became of an entry that was to be kept. */
export type Kept =
  /** `again`: the very same entry was there already; it is kept once. */
  | { readonly kind: 'kept'; readonly seq: number; readonly again: boolean }
  /** Another entry has this id. */
  | { readonly kind: 'conflict' }
  | { readonly kind: 'no such job' };

/** What a workshop's store is and how much is in it. */
export interface StoreFacts {
  readonly kind: 'SQLite' | 'PostgreSQL';
  /** The number of the last step of its schema. */
  readonly schema: number;
  /** On the disk, ledgers and what belongs to them; in PostgreSQL photos too. */
  readonly bytes: number;
  readonly jobs: number;
  readonly entries: number;
  readonly kit_entries: number;
}

/** Where ledgers are kept. An answer means that what was asked is durable: it outlives a crash and a power cut. */
export interface Store {
  readonly jobs: () => Promise<readonly JobLine[]>;
  /** Entries of a job in order, those after a place when one is given (seq runs 1, 2, 3 …), or undefined when there is no such job. */
  readonly entries: (job: string, after?: number) => Promise<readonly Entry[] | undefined>;
  /**
   * Makes a job with its first entries, all or none. A job of this id that begins with the same entries gets those it
   * lacks; one that holds others in their place is a `conflict`.
   * @param also  an entry of another job that tells of this one: both are kept, or neither
   */
  readonly make: (
    job: string,
    entries: readonly Entry[],
    also?: { readonly job: string; readonly entry: SentEntry },
  ) => Promise<Kept>;
  /** Appends an entry; sending it twice keeps it once. */
  readonly append: (job: string, entry: SentEntry) => Promise<Kept>;
  /** The workshop's kit: entries in order, none at first. */
  readonly kit: () => Promise<readonly KitEntry[]>;
  /** Appends entries of the kit, all or none; one that is there already is kept once. */
  readonly keepKit: (entries: readonly SentKitEntry[]) => Promise<Kept>;
  /** Asked of the database itself, so that an answer means that it is there. */
  readonly facts: () => Promise<StoreFacts>;
  readonly close: () => Promise<void>;
}

/** The disk or the database failed in a way a person can do something about. */
export class Fault extends Error {
  readonly code:
    | 'disk full'
    | 'read only'
    | 'not a workshop'
    | 'newer workshop'
    | 'busy'
    | 'damaged'
    | 'unreachable';
  constructor(code: Fault['code'], message: string) {
    super(message);
    this.name = 'Fault';
    this.code = code;
  }
}
