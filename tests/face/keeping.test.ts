import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, statSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Cluster, newCluster } from '../fixture/cluster.ts';
import { newFolder, type Served, serve } from '../server/served.ts';
import { openBrowser, screenText } from './browser.ts';
import { looksRight } from './looks.ts';

/** The built command line on a workshop. */
function waywright(folder: string, ...words: string[]) {
  const done = spawnSync(process.execPath, ['dist/faces/cli/main.js', ...words], {
    env: { ...process.env, WAYWRIGHT_DATA: folder },
    encoding: 'utf8',
  });
  return { code: done.status, out: done.stdout, err: done.stderr };
}

async function note(server: Served, id: string): Promise<number> {
  const reply = await fetch(`${server.address}/api/jobs/demo-saddle/entries`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ kind: 'note', text: id, id, at: '2031-11-25T14:32:00Z' }),
  });
  await reply.arrayBuffer();
  return reply.status;
}

const entriesOf = async (server: Served): Promise<{ id: string; seq: number }[]> =>
  ((await (await fetch(`${server.address}/api/jobs/demo-saddle`)).json()) as { entries: never[] }).entries;

/** The server makes its first backup by itself. */
async function firstBackup(folder: string): Promise<string> {
  const backups = join(folder, 'backups');
  const found = () => {
    try {
      return readdirSync(backups).find((name) => name.endsWith('.json'));
    } catch {
      return undefined;
    }
  };
  await expect.poll(found).toBeDefined();
  return join(backups, found()!.replace('.json', '.db'));
}

describe('a workshop kept safe', () => {
  it('a torn file: the server says so and how to go back, and after that line everything of the backup is there', async () => {
    const folder = await newFolder();
    const server = await serve({ folder });
    await firstBackup(folder);
    const before = await entriesOf(server);
    const open = waywright(folder, 'restore', await firstBackup(folder), '--replace');
    expect([open.code, open.err]).toEqual([2, expect.stringContaining('stop the server first')]);
    await server.stop();
    const file = join(folder, 'workshop.db');
    truncateSync(file, statSync(file).size >> 1);
    const refused = spawnSync(process.execPath, ['dist/faces/server/main.js'], {
      env: { ...process.env, WAYWRIGHT_DATA: folder, PORT: '0' },
      encoding: 'utf8',
      timeout: 30_000,
    });
    expect(refused.status).toBe(1);
    const line = /waywright (restore \S+ --replace)/.exec(refused.stderr)!;
    const restored = waywright(folder, ...line[1]!.split(' '));
    expect([restored.code, restored.err]).toEqual([0, '']);
    expect(restored.out).toContain(`${file}.aside`);
    const again = await serve({ folder });
    expect(await entriesOf(again)).toEqual(before);
    await again.stop();
  });

  it('the foot of the ledger leads to a page that says version, store, size and last backup', async () => {
    const server = await serve();
    await firstBackup(server.folder);
    const { context, page, complaints } = await openBrowser(server.address);
    await page.goto(`${server.address}/job/demo-saddle/ledger`);
    await page.getByRole('link', { name: 'Where it is kept, and the last backup' }).click();
    await page.locator('.workshop-facts').waitFor();
    const said = await screenText(page);
    const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
    for (const word of [`version ${version}`, 'one SQLite file', '3 jobs', 'number 1', 'the newest 14 stay'])
      expect(said).toContain(word);
    await looksRight(page, 'workshop');
    expect(complaints).toEqual([]);
    await context.close();
    await server.stop();
  });
});

describe('a shop with PostgreSQL', () => {
  let cluster: Cluster;
  beforeAll(async () => {
    cluster = await newCluster();
  });
  afterAll(() => cluster.stop());

  it('two servers on one database keep one ledger without a gap, and go on when the database comes back', async () => {
    const database = await cluster.database();
    const one = await serve({ database });
    const two = await serve({ database });
    const sent = Array.from({ length: 40 }, (_, k) => note(k % 2 ? one : two, `n${k}`));
    expect(new Set(await Promise.all(sent))).toEqual(new Set([201]));
    const entries = await entriesOf(one);
    expect(entries).toEqual(await entriesOf(two));
    expect(entries.map(({ seq }) => seq)).toEqual(entries.map((_, k) => k + 1));
    await cluster.kill();
    expect(await note(one, 'late')).toBe(503);
    expect((await fetch(`${one.address}/api/ready`)).status).toBe(503);
    expect((await fetch(`${one.address}/api/health`)).status).toBe(200);
    await cluster.start();
    await expect.poll(() => note(one, 'late')).toBe(201);
    expect((await entriesOf(two)).length).toBe(entries.length + 1);
    await one.stop();
    await two.stop();
  });
});
