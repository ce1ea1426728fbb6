import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../core/math/random.ts';
import type { Doors } from './doors.ts';
import { registerLine } from './line.ts';
import { registerPlate } from './plate.ts';
import { run } from './run.ts';

const scraps = [
  '',
  ',',
  '\t',
  '\n',
  ';',
  '-',
  '.',
  '1e999',
  'none',
  '0,5',
  '"',
  '{',
  '[',
  'null',
  'µm',
  ' thou',
  '12 um in 300',
  '½',
  '\u2212',
  '9'.repeat(30),
];

/** A text with a few places cut out, doubled, or with a scrap put in. */
function spoiled(text: string, seed: number): string {
  const random = seededRandom(seed);
  let out = text;
  for (let turn = 0; turn < 1 + Math.floor(3 * random.even()); turn++) {
    const at = Math.floor(random.even() * out.length);
    const long = Math.floor(random.even() * 12);
    const put =
      random.even() < 0.3
        ? out.slice(at, at + long).repeat(2)
        : scraps[Math.floor(random.even() * scraps.length)]!;
    out = out.slice(0, at) + put + out.slice(at + (random.even() < 0.5 ? long : 0));
  }
  return out;
}

async function codeOf(verb: 'line' | 'plate', text: string) {
  const said: string[] = [];
  const doors = {
    readText: async () => text,
    say: (words: string) => said.push(words),
    complain: (words: string) => said.push(words),
  } as unknown as Doors;
  const code = await run([verb, 'f', '--json'], doors, [registerLine, registerPlate], '0');
  return { code, said: said.join('\n') };
}

const lineJson = readFileSync('checks/data/cases/line-4.json', 'utf8');
const { angles_urad } = JSON.parse(lineJson).input as { angles_urad: number[] };
const plateJson = JSON.stringify({
  kind: 'points',
  points: [0, 1, 2, 3, 4, 5].map((k) => ({
    x_mm: 70 * (k % 3),
    y_mm: 50 * Math.floor(k / 3),
    z_um: (k * k) % 7,
  })),
});
const texts: ['line' | 'plate', string, string][] = [
  ['line', 'JSON', lineJson],
  [
    'line',
    'a table of angles',
    `step_mm,angles_urad\n${angles_urad.map((angle) => `100,${angle}`).join('\n')}`,
  ],
  [
    'line',
    'a pasted table of heights',
    `station [in]\theight [thou]\n${angles_urad.map((angle, k) => `${4 * k}\t${angle / 10}`).join('\n')}`,
  ],
  ['plate', 'JSON', plateJson],
  [
    'plate',
    'a table of points',
    `x_mm;y_mm;z_um\n${[0, 1, 2, 3, 4, 5, 6, 7].map((k) => `${90 * (k % 4)};${60 * Math.floor(k / 4)};${(k * 5) % 7}`).join('\n')}`,
  ],
];

describe('a spoiled text is answered or refused with words, and nothing else', () => {
  it.each(texts)('waywright %s, %s', async (verb, _, text) => {
    expect((await codeOf(verb, text)).code).toBe(0);
    const codes = new Set<number>();
    for (let seed = 1; seed <= 400; seed++) {
      const { code, said } = await codeOf(verb, spoiled(text, seed));
      codes.add(code);
      expect([0, 2], `seed ${seed}`).toContain(code);
      if (code === 0) expect(() => JSON.parse(said)).not.toThrow();
      else expect(said, `seed ${seed}`).toMatch(/^f: .*; expected /);
      expect(said, `seed ${seed}`).not.toMatch(code === 0 ? /NaN|undefined|Infinity|null/ : /NaN|undefined/);
    }
    expect(codes).toEqual(new Set([0, 2]));
  });
});
