import type { Entry } from '../../../core/ledger/entry.ts';
import { jobAddress } from './server.ts';

export interface Listener {
  /** Place of the last entry that is known. */
  readonly after: () => number;
  readonly hear: (entry: Entry) => void;
  /** The shop is in reach again. */
  readonly back: () => void;
}

const retry_ms = 3_000;

interface Line {
  users: number;
  readonly close: () => void;
}

const lines = new Map<string, Line>();

/** Hears of a job's entries as they are written, one line to the shop for all of a page. @returns how to stop */
export function listen(id: string, listener: Listener): () => void {
  const line = lines.get(id) ?? { users: 0, close: opened(id, listener) };
  line.users += 1;
  lines.set(id, line);
  return () => {
    line.users -= 1;
    if (line.users > 0) return;
    lines.delete(id);
    line.close();
  };
}

function opened(id: string, { after, hear, back }: Listener): () => void {
  let source: EventSource | undefined;
  let timer: number | undefined;
  const open = () => {
    source = new EventSource(`${jobAddress(id)}/events?after=${after()}`);
    source.addEventListener('open', back);
    source.addEventListener('entry', (event) =>
      hear(JSON.parse((event as MessageEvent<string>).data) as Entry),
    );
    source.addEventListener('error', () => {
      // A line that broke is mended by the browser; one that was refused is not.
      if (source?.readyState === EventSource.CLOSED) timer = window.setTimeout(open, retry_ms);
    });
  };
  open();
  return () => {
    window.clearTimeout(timer);
    source?.close();
  };
}
