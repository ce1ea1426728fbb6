import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { readTemplates } from '../../adapters/file/templates.ts';
import { solveWithHighs } from '../../adapters/solver/highs.ts';
import { openSqlite } from '../../adapters/store/sqlite.ts';
import type { Store } from '../../shop/store.ts';
import type { ArchiveDoors } from './archive-doors.ts';
import type { Doors } from './doors.ts';
import { registerJob } from './job.ts';
import { registerJobPractise } from './job-practise.ts';
import { registerJobRebuild } from './job-rebuild.ts';
import { run } from './run.ts';

let store: Store;
beforeEach(async () => {
  store = await openSqlite(join(mkdtempSync(join(tmpdir(), 'waywright-practise-')), 'workshop.db'));
});
afterEach(() => store.close());

/** Runs `waywright job …` on a workshop of its own; what it is piped is `given`. */
async function job(words: readonly string[], given = '') {
  const out: string[] = [];
  const err: string[] = [];
  const doors = {
    readText: async () => given,
    say: (line: string) => out.push(line),
    complain: (line: string) => err.push(line),
    solve: solveWithHighs,
    withStore: (work: (its: Store) => Promise<unknown>) => work(store),
    templates: () => readTemplates(),
    now: () => '2031-11-25T14:32:00Z',
  } as unknown as Doors;
  const verbs = [
    registerJob({} as ArchiveDoors),
    registerJobRebuild({ machines: () => [], testLists: () => [] }),
    registerJobPractise,
  ];
  const code = await run(['job', ...words], doors, verbs, '0');
  return { code, out: out.join('\n'), err: err.join('\n') };
}

const piped = async (from: readonly string[], ...into: readonly string[]) =>
  job(['write', 'saddle', '-', ...into], (await job([...from, 'saddle', '--json'])).out);

it('a practice machine is measured, blued and scraped by hand; what is ticked off has come off the metal', async () => {
  expect((await job(['practise', '--seed', '4', '--level', 'hard', '--id', 'saddle'])).out).toBe(
    'saddle made',
  );
  const first = JSON.parse((await job(['measure', 'saddle', '--json'])).out);
  expect(first.map((one: { kind: string }) => one.kind)).toEqual(['sweep taken', 'level read', 'level read']);
  expect(first[0].readings[0]).toBe('0');
  // Which way a dial counts differs from machine to machine: the push test says it.
  expect(['climbed', 'fell']).toContain(first[0].record.push);
  expect((await job(['measure', 'saddle'])).out).toContain(`plunger in: ${first[0].record.push}`);
  const again = JSON.parse((await job(['measure', 'saddle', '--repeat', '1', '--json'])).out);
  expect(again[0]).toMatchObject({ repeat: 1 });
  expect(again[0].readings).not.toEqual(first[0].readings);

  expect((await piped(['measure'])).code).toBe(0);
  const shown = await piped(['blue'], '--show', '--working', '--json');
  const { answer, working } = JSON.parse(shown.out);
  expect(working.some((line: { what: string }) => line.what === 'facing now')).toBe(true);
  const zones: { pad: string; passes_now: number }[] = answer.steer.plan.zones;
  const pads = [...new Set(zones.map((zone) => zone.pad))];
  const on = (pad: string) => zones.filter((zone) => zone.pad === pad).map((zone) => zone.passes_now);
  const once = Object.fromEntries(pads.map((pad) => [pad, on(pad).map((passes) => Math.min(1, passes))]));
  const done = [
    { kind: 'pass made', round: 1, pass: 1, zones: once },
    { kind: 'round closed', round: 1 },
  ];
  expect((await job(['write', 'saddle', '-'], JSON.stringify(done))).code).toBe(0);
  const second = JSON.parse((await job(['measure', 'saddle', '--json'])).out);
  expect(second[0].round).toBe(2);
  expect(second[0].readings).not.toEqual(first[0].readings);

  await piped(['measure']);
  const truth = await job(['truth', 'saddle']);
  expect(truth.out).toMatch(/told and true, round 2.*\n.*\nfacing /);
  expect((await job(['show', 'saddle', '--json'])).code).toBe(0);
  expect((await store.entries('saddle'))!.at(-1)!.kind).toBe('truth shown');
});

it('refuses in words', async () => {
  const { code, err } = await job(['practise', '--seed', 'many', '--slide', 'round', '--id', 'a b']);
  expect(code).toBe(2);
  for (const field of ['seed', 'slide', 'id'])
    expect(err).toMatch(new RegExp(`^job practise: ${field}: `, 'm'));
  expect((await job(['measure', 'nothing'])).err).toContain('expected a job of this workshop');
  await job(['new', '--template', 'lathe-saddle', '--title', 'Of metal', '--id', 'metal']);
  const real = await job(['measure', 'metal']);
  expect(real.code).toBe(2);
  expect(real.err).toContain('expected a practice machine');
  await job(['practise', '--id', 'bare']);
  expect((await job(['truth', 'bare'])).err).toContain('expected a job that was measured');
  expect((await store.entries('bare'))!.map((one) => one.kind)).not.toContain('truth shown');
  expect((await job(['measure', 'bare', '--repeat', 'twice'])).err).toContain('repeat');
});
