import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { openPostgres } from '../../src/adapters/store/postgres.ts';
import { openSqlite } from '../../src/adapters/store/sqlite.ts';
import { jobFile } from '../../src/contract/job-file.ts';
import type { Store } from '../../src/shop/store.ts';
import type { Cluster } from '../fixture/cluster.ts';

/** What kills under write load left behind. */
export interface KillFigures {
  readonly kills: number;
  /** How many of them killed the database server itself, all of its processes. */
  readonly server_kills: number;
  readonly acknowledged: number;
  /** Entries there at the end; those kept but not yet acknowledged are among them. */
  readonly kept: number;
  readonly lost: number;
  /** Entries that are not what was written, to the letter, or that stand in a gap. */
  readonly halves: number;
}

/** A run is killed at a moment between these, after the writer is ready, ms. */
const moments_ms = { least: 0, most: 250 };

const textOf = (id: string): string => {
  const [, hand, n] = /-h(\d)-(\d+)$/.exec(id)!;
  return `${id} `.repeat(1 + ((Number(n) * 7 + Number(hand)) % 60));
};

/**
 * Kills writers with SIGKILL at random moments, each in a run of its own on one workshop, and compares what is there with what
 * was acknowledged after every kill.
 * @param place    a file, or postgres://…
 * @param cluster  given, every second kill is the database server's
 */
export async function killed(kills: number, place: string, cluster?: Cluster): Promise<KillFigures> {
  const open = (): Promise<Store> =>
    place.startsWith('postgres:') ? openPostgres(place) : openSqlite(place);
  const demo = jobFile(JSON.parse(readFileSync('demo/saddle.job.json', 'utf8')));
  const first = await open();
  await first.make('bench', [demo.entries[0]!]);
  await first.close();
  const acknowledged = new Set<string>();
  let [serverKills, lost, halves, kept, checked] = [0, 0, 0, 0, 1];
  for (let run = 0; run < kills; run++) {
    const atServer = cluster !== undefined && run % 2 === 1;
    for (const id of await oneRun(place, run, atServer ? cluster : undefined)) acknowledged.add(id);
    if (atServer) {
      serverKills += 1;
      await cluster.start();
    }
    const store = await open();
    const entries = (await store.entries('bench', checked)) ?? [];
    await store.close();
    const there = new Set<string>();
    entries.forEach((entry, k) => {
      there.add(entry.id);
      const whole = entry.kind === 'note' && entry.text === textOf(entry.id) && entry.seq === checked + k + 1;
      if (!whole) halves += 1;
    });
    // What earlier runs left was compared then; the guards let nothing of it be changed.
    for (const id of acknowledged) if (id.startsWith(`r${run}-`) && !there.has(id)) lost += 1;
    checked += entries.length;
    kept += entries.length;
  }
  // Once more, the whole of it.
  const store = await open();
  const all = new Set(((await store.entries('bench')) ?? []).map(({ id }) => id));
  await store.close();
  lost += [...acknowledged].filter((id) => !all.has(id)).length;
  return { kills, server_kills: serverKills, acknowledged: acknowledged.size, kept, lost, halves };
}

async function oneRun(place: string, run: number, cluster: Cluster | undefined): Promise<string[]> {
  const writer = spawn(process.execPath, ['tests/faults/writer.mjs', place, String(run)], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  let complained = '';
  const gone = new Promise<void>((done) => writer.once('close', () => done()));
  const ready = new Promise<void>((go, failed) => {
    writer.stdout.on('data', (piece: Buffer) => {
      said += piece.toString();
      if (said.startsWith('ready\n')) go();
    });
    writer.once('close', () => failed(new Error(`the writer ended: ${complained}`)));
  });
  writer.stderr.on('data', (piece: Buffer) => {
    complained += piece.toString();
  });
  await ready;
  await new Promise((wait) =>
    setTimeout(wait, moments_ms.least + Math.random() * (moments_ms.most - moments_ms.least)),
  );
  if (cluster) await cluster.kill();
  writer.kill('SIGKILL');
  await gone;
  // The last line may be cut: only what was said whole was acknowledged.
  return said.split('\n').slice(1, -1);
}
