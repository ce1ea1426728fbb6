import { readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { afterAll, expect, type RunnerTestCase, type RunnerTestSuite } from 'vitest';
import { type Compared, section } from './section.ts';

/*
 * Every comparison that a check makes is remembered, and at the end of its file held against docs/trust.md, so the page is what the
 * run gives or the run fails. scripts/trust-table.mjs names a folder instead, and each file then writes its section there.
 */
const compared: Compared[] = [];

/** Remembers one comparison of the test that runs now. */
export function note(one: Omit<Compared, 'test'>): void {
  compared.push({ test: expect.getState().currentTestName ?? '', ...one });
}

/** A run of some tests only, or with failures, says nothing about the page. */
const whole = (task: RunnerTestCase | RunnerTestSuite): boolean =>
  task.type === 'suite' ? task.tasks.every(whole) : task.result?.state === 'pass';

// biome-ignore lint/correctness/noEmptyPattern: the runner hands the file over second, and wants its fixtures taken apart first
afterAll(({}, file) => {
  if (compared.length === 0 || !whole(file as RunnerTestSuite)) return;
  const name = basename(file.file.filepath, '.check.ts');
  const { row, body } = section(compared);
  const folder = process.env.WAYWRIGHT_TRUST;
  if (folder !== undefined) {
    writeFileSync(join(folder, `${name}.json`), JSON.stringify({ name, row, body }));
    return;
  }
  const page = readFileSync('docs/trust.md', 'utf8');
  const listed = page.split('\n').find((line) => line.startsWith(`| [${name}](#${name}) |`));
  const kept = listed?.endsWith(row) === true && page.includes(`\n## ${name}\n`) && page.includes(body);
  expect(kept, `docs/trust.md is not what ${name} gives now: run node scripts/trust-table.mjs`).toBe(true);
});
