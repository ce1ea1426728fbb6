import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { openSqlite } from '../adapters/store/sqlite.ts';
import { jobFile } from '../contract/job-file.ts';
import { listJobs } from './list-jobs.ts';
import type { Store } from './store.ts';

const demo = jobFile(JSON.parse(readFileSync('demo/saddle.job.json', 'utf8')));

it('for a list, only ledgers that went on since the last one are read', async () => {
  const store = await openSqlite(':memory:');
  const read: string[] = [];
  const watched: Store = {
    ...store,
    entries: (job, after) => {
      read.push(job);
      return store.entries(job, after);
    },
  };
  for (const id of ['a', 'b', 'c']) await store.make(id, demo.entries.slice(0, 5));
  await listJobs(watched);
  expect(read).toEqual(['a', 'b', 'c']);
  await store.append('b', { kind: 'note', text: 'oil', id: 'n1', at: '2031-11-25T14:32:00Z' });
  read.length = 0;
  expect(await listJobs(watched)).toMatchObject([{ entries: 5 }, { entries: 6 }, { entries: 5 }]);
  expect(read).toEqual(['b']);
  await store.close();
});
