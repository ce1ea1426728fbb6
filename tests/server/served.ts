import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A workshop served by the built program on a port of its own. */
export interface Served {
  readonly address: string;
  readonly folder: string;
  readonly process: ChildProcess;
  /** Ends it at once, as a power cut would. */
  readonly kill: () => Promise<void>;
  /** Ends it as Ctrl+C does. */
  readonly stop: () => Promise<void>;
}

/** An empty folder for a workshop, thrown away by the system. */
export const newFolder = (): Promise<string> => mkdtemp(join(tmpdir(), 'waywright-'));

/** Starts `dist/faces/server/main.js`; with `folder`, on a workshop that is there already, with `port`, where it was before, with `database`, in PostgreSQL. */
export async function serve(
  given: { folder?: string; port?: number; words?: readonly string[]; database?: string } = {},
): Promise<Served> {
  const folder = given.folder ?? (await newFolder());
  const process = spawn(globalThis.process.execPath, ['dist/faces/server/main.js', ...(given.words ?? [])], {
    env: {
      ...globalThis.process.env,
      WAYWRIGHT_DATA: folder,
      PORT: String(given.port ?? 0),
      ...(given.database === undefined ? {} : { DATABASE_URL: given.database }),
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  const address = await new Promise<string>((found, failed) => {
    const listen = (chunk: Buffer) => {
      said += chunk.toString();
      const at = /Waywright is at (https?:\S+)/.exec(said);
      if (at) found(at[1]!);
    };
    process.stdout!.on('data', listen);
    process.stderr!.on('data', listen);
    process.once('exit', (code) => failed(new Error(`the server ended with ${code}: ${said}`)));
  });
  const ended = new Promise<void>((done) => process.once('exit', () => done()));
  const end = async (signal: NodeJS.Signals) => {
    if (process.exitCode === null && process.signalCode === null) process.kill(signal);
    await ended;
  };
  return { address, folder, process, kill: () => end('SIGKILL'), stop: () => end('SIGTERM') };
}
