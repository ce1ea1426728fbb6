import { describe, expect, it } from 'vitest';
import { solveWithHighs } from '../../adapters/solver/highs.ts';
import { practiceSlides } from '../../core/practice/slides.ts';
import type { Doors } from './doors.ts';
import { registerPractise } from './practise.ts';
import { practiseText } from './practise-text.ts';
import { run } from './run.ts';

async function said(...words: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const doors = {
    say: (line: string) => out.push(line),
    complain: (line: string) => err.push(line),
    solve: solveWithHighs,
  } as unknown as Doors;
  const code = await run(['practise', ...words], doors, [registerPractise], '0');
  return { code, out: out.join('\n'), err: err.join('\n') };
}

describe('waywright practise', () => {
  it('reports rounds, passes, in-band share, alarms and coverage; the same seed, the same figures', async () => {
    const first = await said('--auto', '1', '--rounds', '3', '--json');
    expect(first.code).toBe(0);
    const { out } = await said('--auto', '1', '--rounds', '3');
    const report = JSON.parse(first.out);
    expect(out).toBe(practiseText(report));
    expect(report).toMatchObject({ slide: 'V and flat', material: 'liner', machines: 1, seed: 1 });
    expect(report.jobs).toHaveLength(1);
    expect(report.coverage.features).toBeGreaterThan(0.5);
    expect(out).toContain('1 simulated machine, "V and flat" in liner, seed 1,');
    expect(out).toMatch(/false alarms {2}\d+ in \d+ rounds/);
  });

  it('makes a mistake on purpose and says whether it was seen', async () => {
    const { out } = await said('--auto', '1', '--rounds', '3', '--fault', 'sweep reversed', '--json');
    const { faults, coverage } = JSON.parse(out);
    expect(faults.made).toBe(1);
    expect(coverage).toBeUndefined();
    expect(practiseText(JSON.parse(out))).toContain('sweep reversed  made in 1; flagged');
  });

  it('practises on every slide, one row of a table each, with the mistakes that were flagged', async () => {
    const { code, out } = await said('--auto', '1', '--rounds', '2', '--slide', 'all', '--slips', '1');
    expect(code).toBe(0);
    const rows = out.split('\n').filter((line) => line.startsWith('| '));
    const slides = Object.keys(practiceSlides);
    expect(rows).toHaveLength(2 * (slides.length + 2));
    for (const slide of slides)
      expect(rows.filter((row) => row.startsWith(`| ${slide}, liner |`))).toHaveLength(2);
    expect(rows.at(-1)).toMatch(/ \d of \d \|$/);
  });

  it('names the option, what was given and what is expected', async () => {
    expect((await said('--auto', '0')).err).toBe('--auto: "0"; expected a whole number from 1 to 10000');
    const slide = await said('--auto', '1', '--slide', 'sled');
    expect([slide.code, slide.out]).toEqual([2, '']);
    expect(slide.err).toContain('--slide: "sled"; expected one of "V and flat"');
    expect((await said('--auto', '1', '--fault', 'rain')).err).toContain('"pass too many"');
    expect((await said('--auto', '1', '--material', 'cheese')).err).toContain('"iron"');
    expect((await said('--auto', '1', '--slips', '3')).err).toBe('--slips: "3"; expected with --slide all');
    expect((await said('--auto', '1', '--slide', 'all', '--fault', 'zone missed')).err).toContain('--fault');
  });
});
