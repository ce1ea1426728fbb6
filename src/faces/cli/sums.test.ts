import { describe, expect, it } from 'vitest';
import { sums } from '../../core/sums/sums.ts';
import type { Doors } from './doors.ts';
import { run } from './run.ts';
import { registerSums } from './sums.ts';

async function said(...words: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const files: Record<string, string> = {};
  const doors = {
    say: (line: string) => out.push(line),
    complain: (line: string) => err.push(line),
    writeText: async (file: string, text: string) => {
      files[file] = text;
    },
  } as unknown as Doors;
  const code = await run(['sums', ...words], doors, [registerSums], '0');
  const plain = (lines: readonly string[]) => lines.join('\n').replaceAll(/[\u00a0\u202f\u2009]/g, ' ');
  return { code, out: plain(out), err: plain(err), files };
}

describe('waywright sums', () => {
  it('lists every sum with what it answers', async () => {
    const { code, out } = await said();
    expect(code).toBe(0);
    for (const sum of sums) expect(out).toContain(`${sum.name.padEnd(24)}${sum.question}`);
    expect(JSON.parse((await said('--json')).out).sums).toHaveLength(sums.length);
  });
  it('says what one wants and gives a line that works', async () => {
    const { out } = await said('dovetail-male');
    expect(out).toContain('x = a + D × (1 + cot(A / 2))');
    const line = out.split('\n').at(-1)!;
    const words = [...line.matchAll(/"([^"]*)"|(\S+)/g)].map((word) => word[1] ?? word[2]!).slice(2);
    expect((await said(...words)).code).toBe(0);
  });
  it('answers with number, doubt, working, where the doubt comes from, and source', async () => {
    const { code, out, err } = await said('dovetail-male', 'root=40 mm ± 4 um', 'roll=10mm', 'angle=60');
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('over the rolls: 67.321 ± 0.013 mm');
    expect(out).toContain('x = 40 mm + 10 mm × (1 + cot(60° / 2)) = 67.320508 mm');
    expect(out).toContain('root_mm ± 0.004 mm');
    expect(out).toContain('Source (second hand)');
  });
  it('--json holds values, sds and shares, and nothing else on the line', async () => {
    const { out } = await said(
      'gib',
      'taper=1:50',
      'clearance_um=30',
      'clearance_sd=2um',
      '--json',
      '--draws',
      '4000',
    );
    const answer = JSON.parse(out);
    expect(answer.results[0]).toMatchObject({ key: 'move_mm', value: 1.5, formula: 'm = c / k' });
    expect(answer.results[0].sd).toBeCloseTo(0.1, 9);
    expect(answer.results[0].monte_carlo.sd).toBeCloseTo(0.1, 2);
  });
  it('--inch reads and answers in inches', async () => {
    const { out } = await said('sine-bar', 'length=5', 'angle=27', '--inch');
    expect(out).toMatch(/stack under one roll: 2\.2699[0-9] ± 0\.0000[0-9]+ in/);
  });
  it('--svg draws it', async () => {
    const { files } = await said('v-over-roll', 'angle=90', 'roll=20', '--svg', 'v.svg');
    expect(files['v.svg']).toMatch(/^<svg[\s\S]*24\.142[\s\S]*<\/svg>\n$/);
  });
  it.each([
    [['no-such'], 'sum: "no-such"; expected dovetail-male'],
    [['gib', 'taper=1:50'], 'clearance_um: nothing; expected clearance to take up'],
    [
      ['gib', 'taper=2 deg', 'clearance=3um'],
      'taper: "2 deg"; expected taper, thickness over length. That is an angle',
    ],
    [['gib', 'taper', 'clearance=3um'], '"taper": no key; expected key=value'],
    [
      ['gib', 'taper=1:50', 'clearance=3um', '--draws', '10'],
      '--draws: "10"; expected a whole number, 1000 to 1000000',
    ],
    [['sine-bar-angle', 'length=100', 'stack=101'], 'stack_mm: 101; expected a stack shorter than the bar'],
  ])('%j leaves with 2 and says why', async (words, why) => {
    const { code, out, err, files } = await said(...words);
    expect([code, out, files]).toEqual([2, '', {}]);
    expect(err).toContain(why);
  });
});
