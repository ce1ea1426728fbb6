import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { about } from './about.ts';
import { run } from './run.ts';
import { everyVerbNamed, verbCalled } from './verbs.ts';

describe('which verb is called', () => {
  it.each([
    ['line v.csv --help', 'line'],
    ['help gib', 'gib'],
    ['--help', undefined],
    ['help', undefined],
    ['constructor', undefined],
    ['', undefined],
  ])('%s → %s', (words, name) => {
    expect(verbCalled(words === '' ? [] : words.split(' '))).toBe(name);
  });

  it('a mistyped one is refused with the nearest, and --help lists every one', async () => {
    const err: string[] = [];
    const out: string[] = [];
    const terminal = { say: (text: string) => out.push(text), complain: (text: string) => err.push(text) };
    expect(await run(['stear'], terminal, [everyVerbNamed], '0')).toBe(2);
    expect(err.join('\n')).toContain('Did you mean steer?');
    expect(await run(['--help'], terminal, [everyVerbNamed], '0')).toBe(0);
    for (const name of Object.keys(about)) expect(out.join('\n')).toMatch(new RegExp(`^  ${name} `, 'm'));
  });
});

/** Files that are read before a word is looked at: imports that are neither of types nor waited for. */
function readAtOnce(file: string, seen = new Set<string>()): Set<string> {
  seen.add(file);
  const text = readFileSync(file, 'utf8');
  for (const [, what = '', target = ''] of text.matchAll(/^import ([^;]*?)from '([^']+)';$/gms)) {
    const only = what.replace(/[{}\s]/g, '').split(',');
    if (what.startsWith('type ') || only.every((one) => one === '' || one.startsWith('type'))) continue;
    if (!target.startsWith('.')) seen.add(target);
    else if (!seen.has(join(dirname(file), target))) readAtOnce(join(dirname(file), target), seen);
  }
  return seen;
}

it('--help reads no verb, no schema, no sum and no store', () => {
  const read = [...readAtOnce(resolve('src/faces/cli/main.ts'))];
  expect(read.filter((one) => /^(zod|kysely|better-sqlite3|pg|sharp|pdfkit|highs)$/.test(one))).toEqual([]);
  expect(read.filter((one) => /src\/(core|draw)\//.test(one))).toEqual([]);
  expect(read.some((one) => one.endsWith('cli/verbs.ts'))).toBe(true);
});
