import type {
  BarTaken,
  BlueWord,
  Entry,
  PhotographedPrint,
  SetupRecord,
  TurnedOver,
  TypedReading,
} from './entry.ts';
import { PrintSoFar } from './print-so-far.ts';

/** One set of readings of a set-up, with the entry that holds it. */
export interface Taken {
  readonly entry: string;
  readonly at: string;
  readonly repeat: number;
  readonly record: SetupRecord;
  readonly readings: readonly TypedReading[];
  /** The readings are of a test bar: near and far, each as it is and turned half round. */
  readonly bar?: BarTaken;
}

/** One pass ticked off. */
export interface MadePass {
  readonly entry: string;
  readonly at: string;
  readonly pass: number;
  readonly spot: boolean;
  readonly zones: Readonly<Record<string, readonly number[]>>;
}

/** One photo of a pad's print, with the entry that holds it. */
export interface TakenPhoto extends PhotographedPrint {
  readonly entry: string;
  readonly at: string;
}

/** All that the ledger holds of one round, with the entries it came from: what the screens tick, show and undo. */
export interface RoundRecord {
  readonly round: number;
  /** Readings by set-up; a repeat that was taken again counts with its last. */
  readonly taken: Readonly<Record<string, readonly Taken[]>>;
  /** What is known of the print: each zone as it was tapped or photographed last. */
  readonly print?: {
    /** Pads of which every zone is known. */
    readonly share: Readonly<Record<string, readonly number[]>>;
    readonly tapped: Readonly<Record<string, readonly BlueWord[]>>;
  };
  /** Photos of the print in the order they were read; several of a pad stand beside each other. */
  readonly photos: readonly TakenPhoto[];
  readonly turned?: TurnedOver;
  readonly passes: readonly MadePass[];
  readonly causes: readonly { readonly cause: string; readonly answer: 'yes' | 'no' | 'cannot tell' }[];
  readonly signed: boolean;
}

/** The round that is being worked: one more than the last that was closed. */
export const roundNow = (live: readonly Entry[]): number =>
  live.reduce(
    (round, entry) => (entry.kind === 'round closed' ? Math.max(round, entry.round + 1) : round),
    1,
  );

/** How the part lay last time it was lifted: the map is drawn so until it is asked again. */
export const lastTurned = (live: readonly Entry[]): TurnedOver =>
  live.reduce<TurnedOver>(
    (how, entry) => (entry.kind === 'part turned over' ? entry.how : how),
    'end over end',
  );

/**
 * A round as the ledger has it.
 *
 * @param live  the job's entries that count (what was undone is left out), in order
 */
export function roundRecord(live: readonly Entry[], round: number): RoundRecord {
  const taken: Record<string, Taken[]> = {};
  const passes: MadePass[] = [];
  const causes: RoundRecord['causes'][number][] = [];
  const print = new PrintSoFar();
  const photos: TakenPhoto[] = [];
  let turned: TurnedOver | undefined;
  let signed = false;
  const take = (setup: string, one: Taken) => {
    taken[setup] = [...(taken[setup] ?? []).filter((other) => other.repeat !== one.repeat), one];
  };
  for (const entry of live) {
    if (!('round' in entry) || entry.round !== round) continue;
    const { id, at } = entry;
    switch (entry.kind) {
      case 'sweep taken':
        take(entry.setup, {
          entry: id,
          at,
          repeat: entry.repeat ?? 0,
          record: entry.record,
          readings: entry.readings,
        });
        break;
      case 'level read':
      case 'height read':
        take(entry.setup, {
          entry: id,
          at,
          repeat: entry.repeat ?? 0,
          record: entry.record,
          readings: [entry.reading],
        });
        break;
      case 'bar read': {
        const { held, reading } = entry;
        const { near, far } = reading;
        const shown = [near.first_um, near.turned_um, far.first_um, far.turned_um];
        take(entry.setup, {
          entry: id,
          at,
          repeat: entry.repeat ?? 0,
          record: {},
          readings: shown.map((value) => ({ typed: String(value), value })),
          bar: { held, reading },
        });
        break;
      }
      case 'print read':
        print.tapped(entry.share, entry.tapped);
        break;
      case 'print photographed': {
        const { kind: _kind, round: _round, seq: _seq, id: _id, written: _written, ...photo } = entry;
        print.photographed(entry.pad, entry.shares);
        photos.push({ ...photo, entry: id });
        break;
      }
      case 'part turned over':
        turned = entry.how;
        break;
      case 'pass made':
        passes.push({ entry: id, at, pass: entry.pass, spot: entry.spot === true, zones: entry.zones });
        break;
      case 'cause settled':
        causes.push({ cause: entry.cause, answer: entry.answer });
        break;
      case 'stop signed':
        signed = true;
        break;
    }
  }
  return {
    round,
    taken,
    ...print.known(),
    photos,
    ...(turned ? { turned } : {}),
    passes,
    causes,
    signed,
  };
}
