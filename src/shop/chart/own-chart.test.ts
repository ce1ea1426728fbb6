import { describe, expect, it } from 'vitest';
import { readTestLists } from '../../adapters/file/test-lists.ts';
import { chartFile } from '../../contract/chart.ts';
import { chartReport } from './chart-report.ts';
import { keptWords } from './kept-words.ts';
import { asSense, blankTest, chartKey, linesOf, ownLimit } from './own-chart.ts';

const lists = readTestLists();
const report = (more: object) =>
  chartReport(chartFile({ list: 'engine-lathe', ...more }, lists), undefined, 'metric');
const line = (more: object, id: string, system: 'metric' | 'inch' = 'metric') =>
  chartReport(chartFile({ list: 'engine-lathe', ...more }, lists), undefined, system)
    .groups.flatMap((group) => group.lines)
    .find((one) => one.id === id)!;

describe('tests and limits of one’s own', () => {
  it('a blank test stands in a chart as it is, and as any other sense and kind', () => {
    const blank = blankTest('Bed', ['own-test']);
    expect(blank.id).toBe('own-test-2');
    for (const kind of ['size', 'slope'] as const)
      for (const sense of ['size', 'plus', 'minus', 'either'] as const)
        expect(
          report({ own_tests: [asSense(blank, sense, kind)] }).groups[0]!.lines.some(
            (one) => one.id === 'own-test-2',
          ),
        ).toBe(true);
  });

  it('a line’s limit made one’s own changes nothing until it is changed, whichever way it is spoken', () => {
    for (const system of ['metric', 'inch'] as const)
      for (const id of ['ways-twist', 'bore-far', 'axis-up', 'cross-slide-square', 'centre-height']) {
        const before = line({}, id);
        const own = ownLimit(line({}, id, system));
        const after = line({ limits: [own] }, id);
        expect(after.limit_text, `${id} ${system}`).toBe(before.limit_text);
        expect(after.source_text).toContain("shop's own");
        expect(line({ limits: [{ ...own, um: 3 }] }, id).high).toBe(before.high === 0 ? 0 : 3);
      }
  });

  it('a kept result is said in the line’s unit, spoken over the line’s length', () => {
    const kept = (result: object) =>
      ({ test: 'axis-up', when: 'first' as const, entry: 'e', result }) as never;
    const said = (result: object, system: 'metric' | 'inch' = 'metric') =>
      keptWords(kept(result), line({}, 'axis-up', system), system).replace(/[\u00a0\u2009\u202f]/g, ' ');
    expect(said({ value_um: 19, doubt_um: 4 })).toBe('as found +19.0 ± 4.0 µm in 300 mm');
    expect(said({ value_um: 9.5, over_mm: 150 })).toBe('as found +19.0 µm in 300 mm, doubt not told');
    // 25.4 µm in 300 mm is 1.016 thou in 12 in: the same slope over 304.8 mm.
    expect(said({ value_um: 25.4, doubt_um: 2.54 }, 'inch')).toBe('as found +1.02 ± 0.10 thou in 12 in');
  });

  it('a chart is the same whatever order its keys come back in, and another when anything in it is', () => {
    const one = { list: 'a', machine: { name: 'n', owner: 'o' }, condition: ['x', 'y'] };
    const other = { condition: ['x', 'y'], machine: { owner: 'o', name: 'n' }, list: 'a' };
    expect(chartKey(other)).toBe(chartKey(one));
    expect(chartKey({ ...one, condition: ['y', 'x'] })).not.toBe(chartKey(one));
    expect(chartKey({ ...one, machine: { name: 'n' } })).not.toBe(chartKey(one));
  });

  it('empty lines are no words', () => expect(linesOf('a\n\n  \nb\n')).toEqual(['a', 'b']));
});
