import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readTestLists } from '../../adapters/file/test-lists.ts';
import { chartFile } from '../../contract/chart.ts';
import type { Kit } from '../../core/kit/kit.ts';
import { chartReport } from './chart-report.ts';
import { kitWays, setupNumbers, setupWords, wayKey } from './kit-ways.ts';

const lists = readTestLists();
/** Invented things of a small shop. */
const kit: Kit = {
  instruments: [
    { kind: 'indicator', name: 'lever dial', graduation_um: 2, repeatability_um: 0.8 },
    { kind: 'level', name: 'block level', graduation_urad: 20, repeatability_urad: 4, base_mm: 200 },
  ],
  references: [
    { kind: 'square', name: 'big square', length_mm: 250, known: { by: 'limit', limit_um: 3 } },
    { kind: 'test bar', name: 'bar', length_mm: 300, known: { by: 'limit', limit_um: 3 } },
    { kind: 'straightedge', name: 'edge', length_mm: 1000, known: { by: 'limit', limit_um: 4 } },
    { kind: 'plate', name: 'plate', length_mm: 600, width_mm: 400, known: { by: 'limit', limit_um: 5 } },
  ],
};
const results = JSON.parse(readFileSync('demo/lathe.chart.json', 'utf8'));
const report = (setups?: readonly unknown[]) =>
  chartReport(
    chartFile({ ...results, ...(setups ? { kit: { ...kit, setups } } : {}) }, lists),
    undefined,
    'metric',
  );
const lines = report()
  .groups.flatMap((group) => group.lines)
  .filter((line) => !line.id.includes(':'));

describe('what a test is measured with', () => {
  it('every way that is offered fits its line: the chart takes it', () => {
    let offered = 0;
    for (const line of lines)
      for (const way of kitWays(kit, line)) {
        offered += 1;
        expect(() => report([way.setup]), `${line.id}: ${way.words}`).not.toThrow();
        expect(wayKey(way.setup)).toBe(way.key);
        expect(setupNumbers(way.setup).length).toBeGreaterThan(0);
      }
    expect(offered).toBeGreaterThan(lines.length);
    const keys = kitWays(kit, lines[0]!).map((way) => way.key);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('nothing is offered that the kit has not, and no reference is longer than it is', () => {
    expect(kitWays({ instruments: [], references: kit.references }, { id: 'a', kind: 'slope' })).toEqual([]);
    const long = kitWays(kit, { id: 'a', kind: 'slope', over_mm: 2000 });
    expect(long.map((way) => ('length_mm' in way.setup ? way.setup.length_mm : undefined))).toEqual([
      250,
      300,
      300,
      undefined,
    ]);
    expect(setupWords(long[0]!.setup)).toBe('Square sweep: lever dial, big square');
  });

  it('the cheapest next measurement goes by it', () => {
    const bare = report();
    let bettered = 0;
    let told = 0;
    for (const line of lines.filter((one) => bare.remaining.some(({ number }) => number === one.number)))
      for (const way of kitWays(kit, line)) {
        const { next, remaining } = report([way.setup]);
        const minutes = (all: typeof remaining) => all.find((one) => one.number === line.number)!.minutes;
        if (minutes(remaining) !== minutes(bare.remaining)) bettered += 1;
        if (remaining[0]!.number !== line.number) continue;
        expect(next).toContain(`(${way.words})`);
        told += 1;
      }
    expect(bettered).toBeGreaterThan(0);
    expect(told).toBeGreaterThan(0);
    expect(bare.next).not.toContain('(');
  });
});
