import { createRequire } from 'node:module';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { newFolder, serve } from './served.ts';

/** What was acknowledged must be there; what is there must be whole. */
it('killed in the middle of 200 entries, the server has lost no acknowledged entry and written none by half', async () => {
  const folder = await newFolder();
  const acknowledged = new Map<string, string>();
  const sent = new Map<string, string>();
  let written = 0;
  // Killed at three moments, started again each time on the same folder.
  for (const killAfter of [23, 71, 140]) {
    const server = await serve({ folder });
    const jobs = `${server.address}/api/jobs`;
    const made = await post(jobs, {
      id: 'bench',
      at: '2031-11-25T14:00:00Z',
      template: 'lathe-saddle',
      title: 'Durability',
      dimensions: {},
    });
    expect([200, 201]).toContain(made);
    const killed = { done: false };
    // Four hands write at once, as phones do.
    const hand = async () => {
      while (!killed.done && written < 200) {
        written += 1;
        const id = `e-${written}`;
        const text = `entry ${written} `.repeat(40);
        sent.set(id, text);
        const status = await post(`${jobs}/bench/entries`, {
          id,
          at: '2031-11-25T14:32:00Z',
          kind: 'note',
          text,
        });
        if (status === 201) acknowledged.set(id, text);
      }
    };
    const hands = [hand(), hand(), hand(), hand()];
    while (acknowledged.size < killAfter) await new Promise((wait) => setTimeout(wait, 1));
    await server.kill();
    killed.done = true;
    await Promise.all(hands);
  }
  const server = await serve({ folder });
  const response = await fetch(`${server.address}/api/jobs/bench`);
  const { entries } = (await response.json()) as {
    entries: { id: string; seq: number; kind: string; text?: string }[];
  };
  await server.stop();

  const kept = new Map(entries.map((entry) => [entry.id, entry.text]));
  expect(acknowledged.size).toBeGreaterThanOrEqual(140);
  for (const [id, text] of acknowledged) expect(kept.get(id), `acknowledged ${id}`).toBe(text);
  // Nothing is there that was not sent, and nothing differs from what was sent.
  for (const entry of entries.slice(1)) expect(sent.get(entry.id)).toBe(entry.text);
  expect(entries.map((entry) => entry.seq)).toEqual(entries.map((_, k) => k + 1));

  const Database = createRequire(import.meta.url)('better-sqlite3') as typeof import('better-sqlite3');
  const database = new Database(join(folder, 'workshop.db'), { readonly: true });
  expect(database.pragma('integrity_check', { simple: true })).toBe('ok');
  database.close();
});

async function post(address: string, body: unknown): Promise<number | undefined> {
  try {
    const response = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    await response.arrayBuffer();
    return response.status;
  } catch {
    // Killed under it: not acknowledged.
    return undefined;
  }
}
