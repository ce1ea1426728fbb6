import { execFile } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { mkdir, readFile, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, describe, expect, it } from 'vitest';
import { readTemplates } from '../../src/adapters/file/templates.ts';
import { readTestLists } from '../../src/adapters/file/test-lists.ts';
import { readWholeMachines } from '../../src/adapters/file/whole-machines.ts';
import { faceRule } from '../../src/adapters/paper/face.ts';
import { pressPdf } from '../../src/adapters/paper/press.ts';
import { solveWithHighs } from '../../src/adapters/solver/highs.ts';
import { openSqlite } from '../../src/adapters/store/sqlite.ts';
import type { Doors } from '../../src/faces/cli/doors.ts';
import { run } from '../../src/faces/cli/run.ts';
import { loadVerb, type MoreDoors, verbCalled } from '../../src/faces/cli/verbs.ts';
import type { Store } from '../../src/shop/store.ts';

/** The script's own parts, as it runs them; plain modules without types. */
const part = (name: string) => import(new URL(`../../examples/rebuild/${name}.mjs`, import.meta.url).href);
const { facts } = (await part('facts')) as { facts: Record<string, { seed: number }> };
const { inventedMachine } = await part('invented');
const { openShop } = await part('shop');
const { rebuild } = await part('steps');

const open = new Map<string, Store>();
afterAll(async () => {
  for (const store of open.values()) await store.close();
});

/** The same command line without a process for each call: its own words, files, workshop and exit codes. */
async function inProcess(words: readonly string[], folder: string): Promise<string> {
  const out: string[] = [];
  const err: string[] = [];
  const kept = async (file: string, text: string | Uint8Array) => writeFile(file, text);
  const doors: Doors = {
    readText: (file) => readFile(file, 'utf8'),
    writeText: kept,
    say: (line) => out.push(line),
    complain: (line) => err.push(line),
    solve: solveWithHighs,
    withStore: async (work) => {
      const file = join(folder, 'workshop', 'workshop.db');
      await mkdir(join(folder, 'workshop'), { recursive: true });
      if (!open.has(file)) open.set(file, await openSqlite(file));
      return work(open.get(file)!);
    },
    templates: () => readTemplates(),
    now: () => new Date().toISOString(),
  };
  const chart = {
    testLists: () => readTestLists(),
    press: pressPdf,
    faceRule: async () => faceRule(),
    writeBytes: kept,
    paperPhoto: async () => undefined,
  };
  const more = { chart, machines: readWholeMachines } as unknown as MoreDoors;
  const code = await run([...words], doors, [await loadVerb(verbCalled(words)!, more)], '0');
  if (code !== 0) throw new Error(`waywright ${words.join(' ')} left with ${code}: ${err.join('\n')}`);
  return out.join('\n').trimEnd();
}

describe.each(Object.keys(facts))('%s, from an empty start to its final chart', (id) => {
  it('every step is done in its order, every bench ends proven, every line of its list is judged', async () => {
    const its = { ...facts[id]! };
    const folder = mkdtempSync(join(tmpdir(), 'waywright-thread-'));
    const shop = openShop(folder, inProcess);
    const told: string[] = [];
    const end = await rebuild({
      shop,
      machine: inventedMachine(its.seed),
      id,
      its,
      tell: (line: string) => told.push(line),
    });
    const machine = readWholeMachines().find((one) => one.id === id)!;
    expect(end.steps).toBe(machine.steps.length);
    expect(told.join('\n')).toContain('every step is done and stands');
    const benches = machine.steps.filter((step) => step.bench).length;
    expect(told.filter((line) => / round \d+: .*: stop$/.test(line))).toHaveLength(benches);
    const list = readTestLists().find((one) => one.id === id)!;
    expect(end.tally['not measured']).toBe(0);
    expect(end.tally.outside).toBe(0);
    expect(end.tally.within).toBeGreaterThanOrEqual(list.tests.length);
    expect((await stat(end.pdf)).size).toBeGreaterThan(20_000);
    console.log(`${id}: ${end.steps} steps, ${end.rounds} rounds, ${shop.calls()} calls`);
  });
});

const script = (...words: string[]) => promisify(execFile)(process.execPath, words);

it('the scripts themselves, a process for each call, as their user runs them: a saddle proven, with its report', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'waywright-script-'));
  const { stdout } = await script('examples/saddle.mjs', '--in', folder, '--working', '--built');
  expect(stdout).toMatch(/^round 1: facing .* scrape, \d+ passes on zones$/m);
  expect(stdout).toContain('· facing against its band: within: low ≤ value − doubt');
  expect(stdout).toMatch(/\nOf 3 lines 3 are within\.\n/);
  expect(stdout).toContain('told and true, round');
  expect(stdout).toMatch(/\nAlignment proven, bearing proven after \d+ rounds /);
  expect((await stat(join(folder, 'saddle.pdf'))).size).toBeGreaterThan(20_000);
  await expect(script('examples/rebuild.mjs', 'planer')).rejects.toThrow(
    'planer: expected one of engine-lathe',
  );
});
