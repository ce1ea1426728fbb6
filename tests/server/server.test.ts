import { spawn } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { newFolder, type Served, serve } from './served.ts';

const steerCase = JSON.parse(readFileSync('checks/data/cases/steer-3.json', 'utf8')).input;

async function json(
  address: string,
  body?: unknown,
): Promise<{ status: number; body: Record<string, unknown> }> {
  const response = await fetch(
    address,
    body === undefined
      ? {}
      : { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) },
  );
  return { status: response.status, body: (await response.json()) as Record<string, unknown> };
}

/** Runs a built program to its end. */
function ended(
  script: string,
  words: readonly string[],
  env: Record<string, string>,
): Promise<{ code: number | null; out: string; err: string }> {
  return new Promise((done) => {
    const child = spawn(process.execPath, [script, ...words], { env: { ...process.env, ...env } });
    let out = '';
    let err = '';
    child.stdout.on('data', (chunk: Buffer) => {
      out += chunk.toString();
    });
    child.stderr.on('data', (chunk: Buffer) => {
      err += chunk.toString();
    });
    child.once('exit', (code) => done({ code, out, err }));
  });
}

describe('the served workshop', () => {
  let served: Served;
  beforeAll(async () => {
    served = await serve();
  });
  afterAll(async () => {
    await served.stop();
  });

  it('listens on this machine’s own address only, and opens with the demo job', async () => {
    expect(served.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
    const { body } = await json(`${served.address}/api/jobs`);
    expect(body.jobs).toMatchObject([
      { id: 'demo-saddle', template: 'lathe-saddle' },
      { id: 'demo-lathe', machine: { title: 'Engine lathe', steps: 27 } },
      { id: 'demo-mill', machine: { title: 'Vertical knee mill' } },
    ]);
    for (const job of body.jobs as { demo: string }[]) expect(job.demo).toContain('Invented');
  });

  it('surveys, kits and sums are answered as on the command line, and refused by field', async () => {
    const cases = (name: string) => JSON.parse(readFileSync(`checks/data/cases/${name}.json`, 'utf8'));
    const { input, expected } = cases('line-2');
    const way = await json(`${served.address}/api/line`, input);
    expect(way.status).toBe(200);
    expect((way.body.straightness_um as Record<string, number>).minimum_zone).toBeCloseTo(
      expected.straightness_um.minimum_zone,
      3,
    );
    const table = cases('plate-1');
    const flat = await json(`${served.address}/api/plate`, table.input);
    expect((flat.body.flatness_um as Record<string, number>).minimum_zone).toBeCloseTo(
      table.expected.flatness_um.minimum_zone,
      3,
    );
    const sum = await json(`${served.address}/api/sums`, {
      sum: 'dovetail-male',
      values: { root_mm: 40, roll_mm: 10, angle_deg: 60 },
    });
    // 40 + 10 (1 + cot 30°).
    expect((sum.body.results as { value: number }[])[0]!.value).toBeCloseTo(67.320508076, 8);
    const twist = { kind: 'twist', stations_mm: [0, 500, 1000], tilts_urad: [3, 13, 21] };
    expect((await json(`${served.address}/api/line`, twist)).body.twist_urad).toMatchObject({ range: 18 });
    const kit = await json(`${served.address}/api/kit/report`, {
      instruments: [],
      references: [],
      targets: [],
      setups: [],
    });
    expect([kit.status, (kit.body.issues as { path: string }[])[0]!.path]).toEqual([400, 'targets']);
    const wrong = await json(`${served.address}/api/line`, { ...twist, kind: 'twirl' });
    expect([wrong.status, (wrong.body.issues as { path: string }[])[0]!.path]).toEqual([400, 'kind']);
  });

  it('goes on answering while a plan is worked out on another thread', async () => {
    const order: string[] = [];
    const plan = json(`${served.address}/api/steer`, steerCase).then((answer) => {
      order.push('plan');
      return answer;
    });
    await json(`${served.address}/api/health`);
    order.push('health');
    const answered = await plan;
    expect(answered.status).toBe(200);
    expect(order).toEqual(['health', 'plan']);
  });

  it('answers a job as the command line does on its exported rounds', async () => {
    const answer = await json(`${served.address}/api/jobs/demo-saddle/answer`);
    const shown = await ended('dist/faces/cli/main.js', ['job', 'show', 'demo-saddle', '--json'], {
      WAYWRIGHT_DATA: served.folder,
    });
    expect([shown.code, shown.err]).toEqual([0, '']);
    expect(JSON.parse(shown.out).answer).toEqual(answer.body);
  });

  it('the command line writes into the workshop that the server has open', async () => {
    const made = await ended(
      'dist/faces/cli/main.js',
      [
        'job',
        'new',
        '--template',
        'lathe-saddle',
        '--title',
        'Beside the server',
        '--id',
        'beside',
        '--json',
      ],
      { WAYWRIGHT_DATA: served.folder },
    );
    expect([made.code, made.err]).toEqual([0, '']);
    const note = { id: 'n1', at: '2031-11-25T14:32:00Z', kind: 'note', text: 'from the page' };
    expect(await json(`${served.address}/api/jobs/beside/entries`, note)).toEqual({
      status: 201,
      body: { seq: 2 },
    });
  });

  it('draws the page at every screen’s address, and answers 404 in words elsewhere', async () => {
    for (const screen of ['/', '/job/demo-saddle', '/new']) {
      const response = await fetch(`${served.address}${screen}`);
      expect(response.status).toBe(200);
      expect(await response.text()).toContain('<title>Waywright</title>');
      const policy = response.headers.get('content-security-policy') ?? '';
      expect(policy).toContain("default-src 'self'");
      expect(policy).toMatch(/script-src 'self'(;|$)/);
      expect(policy).toMatch(/style-src 'self'(;|$)/);
    }
    expect((await json(`${served.address}/api/none`)).body.code).toBe('not found');
    expect((await fetch(`${served.address}/assets/none.js`)).status).toBe(404);
  });

  it('another server on the same port ends with words, and the first goes on', async () => {
    const port = new URL(served.address).port;
    const second = await ended('dist/faces/server/main.js', [], {
      PORT: port,
      WAYWRIGHT_DATA: await newFolder(),
    });
    expect(second.code).toBe(1);
    expect(second.err).toContain(port);
    expect((await json(`${served.address}/api/health`)).body.ok).toBe(true);
  });
});

describe('starting and stopping', () => {
  it('stops at SIGTERM with the file closed, and starts again with the jobs as they were', async () => {
    const first = await serve();
    await json(`${first.address}/api/jobs`, {
      id: 'mine',
      at: '2031-11-25T14:00:00Z',
      template: 'double-v',
      title: 'Mine',
      dimensions: {},
    });
    await first.stop();
    expect(first.process.exitCode).toBe(0);
    expect(existsSync(join(first.folder, 'workshop.db-wal'))).toBe(false);
    const second = await serve({ folder: first.folder });
    const { body } = await json(`${second.address}/api/jobs`);
    expect((body.jobs as { id: string }[]).map((job) => job.id)).toEqual([
      'demo-saddle',
      'demo-lathe',
      'demo-mill',
      'mine',
    ]);
    await second.stop();
  });

  it.each([
    ['PORT: "many"', { PORT: 'many' }],
    ['PORT: "70000"', { PORT: '70000' }],
  ])('%s is refused in words', async (words, env) => {
    const failed = await ended('dist/faces/server/main.js', [], {
      WAYWRIGHT_DATA: await newFolder(),
      ...env,
    });
    expect(failed.code).toBe(1);
    expect(failed.err).toContain(words);
  });

  it('does not start on a file that is no workshop, and leaves it as it is', async () => {
    const folder = await newFolder();
    const letter = 'Dear shop, the saddle is in the crate. '.repeat(60);
    writeFileSync(join(folder, 'workshop.db'), letter);
    const failed = await ended('dist/faces/server/main.js', [], { PORT: '0', WAYWRIGHT_DATA: folder });
    expect(failed.code).toBe(1);
    expect(failed.err).toContain('is not a database');
    expect(readFileSync(join(folder, 'workshop.db'), 'utf8')).toBe(letter);
  });
});
