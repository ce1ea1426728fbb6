import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { openSqlite } from '../dist/adapters/store/sqlite.js';
import { jobFile } from '../dist/contract/job-file.js';
import { timed } from './clock.mjs';

const demo = jobFile(JSON.parse(readFileSync(new URL('../demo/saddle.job.json', import.meta.url), 'utf8')));
const sweep = demo.entries.find((entry) => entry.kind === 'sweep taken');

/** One entry after another, each durable before the next: through the store, and as a bare prepared insert. */
export async function storeTiming(quick) {
  const folder = mkdtempSync(join(tmpdir(), 'waywright-bench-'));
  const seconds = quick ? 0.3 : 3;
  try {
    const store = await openSqlite(join(folder, 'store.db'));
    await store.make(demo.id, demo.entries);
    let n = 0;
    const { seq: _seq, ...deed } = sweep;
    const ours = await timed(() => store.append(demo.id, { ...deed, id: `bench-${n++}` }), { seconds });
    await store.close();

    const bare = new Database(join(folder, 'bare.db'));
    bare.pragma('journal_mode = WAL');
    bare.pragma('synchronous = FULL');
    bare.exec(
      'create table entry (job text, seq integer, id text, at text, kind text, deed text, primary key (job, seq), unique (job, id))',
    );
    const insert = bare.prepare('insert into entry values (?, ?, ?, ?, ?, ?)');
    const text = JSON.stringify(deed);
    const alone = await timed(() => insert.run(demo.id, ++n, `bench-${n}`, sweep.at, sweep.kind, text), {
      seconds,
    });
    bare.close();

    const rate = ({ median, runs }) => ({ median: 1000 / median, runs });
    return [
      {
        what: 'entries kept, each durable before the next',
        unit: '/s',
        times: rate(ours),
        reference: { name: 'better-sqlite3 alone, WAL and FULL', times: rate(alone) },
      },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
