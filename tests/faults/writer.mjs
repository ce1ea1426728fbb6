// Writes to a workshop without a pause, four hands at once, and says on standard output which entries were acknowledged.
// Usage: node tests/faults/writer.mjs PLACE RUN; PLACE is a file or postgres://…
import { openPostgres } from '../../dist/adapters/store/postgres.js';
import { openSqlite } from '../../dist/adapters/store/sqlite.js';
import { writingOnThread } from '../../dist/adapters/store/sqlite-thread.js';

const [place, run] = process.argv.slice(2);
// As the server has it: what waits for the disk does so on a thread of its own.
const thread = new URL('../../dist/faces/server/store-worker/main.js', import.meta.url);
const store = place.startsWith('postgres:')
  ? await openPostgres(place)
  : writingOnThread(await openSqlite(place), place, thread);
// Nothing is kept by this; it answers once the thread stands and has the file open.
await store.keepKit([]);
process.stdout.write('ready\n');
const hands = [0, 1, 2, 3].map(async (hand) => {
  for (let n = 0; ; n++) {
    const id = `r${run}-h${hand}-${n}`;
    const text = `${id} `.repeat(1 + ((n * 7 + hand) % 60));
    try {
      const kept = await store.append('bench', { kind: 'note', text, id, at: '2031-11-25T14:32:00Z' });
      if (kept.kind === 'kept') process.stdout.write(`${id}\n`);
    } catch (failure) {
      // The database was killed under it: not acknowledged, and this run is over.
      process.stderr.write(`${failure.message}\n`);
      return;
    }
    await new Promise((wait) => setImmediate(wait));
  }
});
await Promise.all(hands);
await store.close();
