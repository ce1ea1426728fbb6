import { describe, expect, it } from 'vitest';
import { answerSum, type SumAsk } from './answer.ts';
import { formulaText, workingText } from './said.ts';
import { type Sum, sin } from './sum.ts';
import { sumNamed, sums } from './sums.ts';

/** A sum asked with its own example, every doubt as usual or scaled. */
function asked(sum: Sum, scale = 1): SumAsk {
  const sds = Object.fromEntries(Object.entries(sum.inputs).map(([key, input]) => [key, scale * input.sd]));
  return { name: sum.name, values: sum.example, sds, taken: [], usual: [] };
}

describe.each(sums.map((sum) => [sum.name, sum] as const))('%s', (_, sum) => {
  it('answers its own example, with a doubt for every result that an unsure input enters', () => {
    for (const result of answerSum(sum, asked(sum))) {
      expect(Number.isFinite(result.value)).toBe(true);
      const enters = result.shares.some((share) => share.sd > 0);
      expect(result.sd > 0).toBe(enters);
      expect(Math.hypot(...result.shares.map((share) => share.sd))).toBeCloseTo(result.sd, 9);
    }
  });
  it('its example keeps its own limits and relations', () => {
    for (const [key, input] of Object.entries(sum.inputs)) {
      const value = sum.example[key]!;
      expect(value).toBeGreaterThanOrEqual(input.least ?? -Infinity);
      expect(value).toBeLessThanOrEqual(input.most ?? Infinity);
      if (input.above !== undefined) expect(value).toBeGreaterThan(input.above);
    }
    expect(sum.fits?.(sum.example)).toBeUndefined();
  });
  it('every input stands in a formula, and every letter of a formula is an input or an earlier result', () => {
    const seen = new Set<string>();
    const used = new Set<string>();
    for (const [key, result] of Object.entries(sum.results)) {
      for (const [, name] of result.formula.matchAll(/\{(\w+)\}/g)) {
        expect(name! in sum.inputs || seen.has(name!)).toBe(true);
        used.add(name!);
      }
      seen.add(key);
      expect(formulaText(sum, key)).not.toMatch(/[{}]/);
      const numbers = { ...sum.example, ...sum.of(sum.example) };
      expect(workingText(sum, key, numbers, 'inch')).not.toMatch(/[{}]|NaN|undefined/);
    }
    expect(Object.keys(sum.inputs).filter((key) => !used.has(key))).toEqual([]);
  });
  it('has letters of its own for every input and result', () => {
    const symbols = [...Object.values(sum.inputs), ...Object.values(sum.results)].map((one) => one.symbol);
    expect(new Set(symbols).size).toBe(symbols.length);
  });
  it('draws of the inputs spread as the slopes say', () => {
    // Doubts small enough that the formula is straight over them, so that two ways must give one answer.
    for (const result of answerSum(sum, asked(sum, 0.05), { seed: 7, trials: 20_000 })) {
      if (result.sd === 0) continue;
      expect(result.sampled!.sd / result.sd).toBeGreaterThan(0.97);
      expect(result.sampled!.sd / result.sd).toBeLessThan(1.03);
      expect(Math.abs(result.sampled!.mean - result.value)).toBeLessThan(0.05 * result.sd);
    }
  });
});

describe('the list', () => {
  it('names each sum once, in words joined by hyphens', () => {
    expect(new Set(sums.map((sum) => sum.name)).size).toBe(sums.length);
    for (const sum of sums) expect(sum.name).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect(sumNamed('gib')?.title).toContain('gib');
    expect(sumNamed('no such sum')).toBeUndefined();
  });
  it('slopes are those of the calculus: a roll of a dovetail counts −D / 2 sin²(A/2) for a radian of angle', () => {
    const [over] = answerSum(sumNamed('dovetail-male')!, asked(sumNamed('dovetail-male')!));
    const slope = over!.shares.find((share) => share.key === 'angle')!.slope;
    expect(slope).toBeCloseTo(((-10 / (2 * sin(30) ** 2)) * Math.PI) / 180, 9);
  });
  it('large doubts bend: the draws see what the slopes do not', () => {
    const sine = sumNamed('sine-bar-angle')!;
    const ask = { ...asked(sine), values: { length: 100, stack: 93 }, sds: { length: 0, stack: 1.2 } };
    const [angle] = answerSum(sine, ask, { seed: 3, trials: 50_000 });
    expect(angle!.sampled!.mean).toBeGreaterThan(angle!.value + 0.02 * angle!.sd);
  });
  it('draws that fall where the formula has no value are told, and the slopes answer still', () => {
    const sine = sumNamed('sine-bar-angle')!;
    const ask = { ...asked(sine), values: { length: 100, stack: 96 }, sds: { length: 0, stack: 2 } };
    const [angle] = answerSum(sine, ask, { seed: 3, trials: 5000 });
    expect(angle!.sampled).toBeUndefined();
    expect(angle!.not_sampled).toContain('too large');
    expect(angle!.sd).toBeGreaterThan(0);
  });
});
