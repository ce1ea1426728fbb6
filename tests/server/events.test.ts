import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openSqlite } from '../../src/adapters/store/sqlite.ts';
import { newFolder, type Served, serve } from './served.ts';

const job = 'demo-saddle';
let folder: string;
let served: Served;
beforeAll(async () => {
  folder = await newFolder();
  served = await serve({ folder });
});
afterAll(async () => {
  await served.stop();
});

interface Heard {
  readonly seqs: number[];
  readonly text: () => string;
  readonly close: () => void;
  readonly ended: Promise<void>;
}

/** Listens as a browser does, without one. */
async function listen(query = '', headers: Record<string, string> = {}): Promise<Heard> {
  const stop = new AbortController();
  const response = await fetch(`${served.address}/api/jobs/${job}/events${query}`, {
    headers,
    signal: stop.signal,
  });
  expect(response.headers.get('content-type')).toMatch(/^text\/event-stream/);
  expect(response.headers.get('content-security-policy')).toContain("default-src 'self'");
  const seqs: number[] = [];
  let text = '';
  const ended = (async () => {
    const decoder = new TextDecoder();
    for await (const part of response.body!) {
      text += decoder.decode(part as Uint8Array, { stream: true });
      const whole = text.slice(0, text.lastIndexOf('\n\n'));
      seqs.splice(0, seqs.length, ...[...whole.matchAll(/^id: (\d+)$/gm)].map((found) => Number(found[1])));
    }
  })().catch(() => undefined);
  return { seqs, text: () => text, close: () => stop.abort(), ended };
}

const note = async (text: string, id: string = crypto.randomUUID()): Promise<number> => {
  const response = await fetch(`${served.address}/api/jobs/${job}/entries`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ kind: 'note', text, id, at: '2031-11-25T14:32:00Z' }),
  });
  return ((await response.json()) as { seq: number }).seq;
};

describe('a job’s entries as they are written', () => {
  it('each comes once, in order, whole, and soon', async () => {
    const heard = await listen();
    const wrote: number[] = [];
    for (let k = 0; k < 20; k++) wrote.push(await note(`line ${k}\nsecond\u2028third`));
    await expect.poll(() => heard.seqs.length).toBe(20);
    expect(heard.seqs).toEqual(wrote);
    const last = JSON.parse(/data: ([^\n]*)\n\n$/.exec(heard.text())![1]!);
    expect(last).toMatchObject({ kind: 'note', text: 'line 19\nsecond\u2028third', seq: wrote.at(-1) });
    heard.close();
  });

  it('whoever comes back is told what was missed, by the last id or by ?after', async () => {
    const seen = await note('before the break');
    const missed = [await note('missed 1'), await note('missed 2')];
    for (const heard of [
      await listen('', { 'last-event-id': String(seen) }),
      await listen(`?after=${seen}`),
      await listen('?after=0', { 'last-event-id': String(seen) }),
    ]) {
      await expect.poll(() => heard.seqs).toEqual(missed);
      heard.close();
    }
  });

  it('what another process writes is told too, and an entry sent twice comes once', async () => {
    const heard = await listen();
    const store = await openSqlite(join(folder, 'workshop.db'));
    const entry = {
      kind: 'note',
      text: 'from elsewhere',
      id: 'elsewhere',
      at: '2031-11-25T14:32:00Z',
    } as const;
    const kept = await store.append(job, entry);
    await store.append(job, entry);
    await store.close();
    const after = await note('and here');
    await expect.poll(() => heard.seqs).toEqual([(kept as { seq: number }).seq, after]);
    heard.close();
  });

  it('a place that is no number, and a job that is not there, are refused', async () => {
    for (const query of ['?after=-1', '?after=x', '?after=1e99'])
      expect((await fetch(`${served.address}/api/jobs/${job}/events${query}`)).status, query).toBe(400);
    expect((await fetch(`${served.address}/api/jobs/none/events`)).status).toBe(404);
  });

  it('no more than a dozen pages of one device, and the server ends with pages open', async () => {
    const open: Heard[] = [];
    for (let k = 0; k < 12; k++) open.push(await listen());
    expect((await fetch(`${served.address}/api/jobs/${job}/events`)).status).toBe(429);
    await served.stop();
    await Promise.all(open.map((one) => one.ended));
    served = await serve({ folder });
  });
});
