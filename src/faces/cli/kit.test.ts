import { describe, expect, it } from 'vitest';
import type { Doors } from './doors.ts';
import { registerKit } from './kit.ts';
import { run } from './run.ts';

const given = {
  instruments: [{ kind: 'indicator', name: 'lever', graduation_um: 2, repeatability_um: 0.7 }],
  references: [
    {
      kind: 'square',
      name: 'square',
      length_mm: 300,
      known: { by: 'grade', standard: 'DIN 875', grade: '0' },
    },
    {
      kind: 'plate',
      name: 'plate',
      length_mm: 1000,
      width_mm: 630,
      known: { by: 'grade', standard: 'DIN 876', grade: '0' },
    },
  ],
  targets: [
    { name: 'facing', low_um: 6, high_um: 20, over_mm: 300 },
    { name: 'flat', high_um: 3 },
  ],
  setups: [
    {
      method: 'square sweep',
      name: 'square on the cross ways',
      target: 'facing',
      instrument: 'lever',
      reference: 'square',
      length_mm: 250,
      points: 11,
    },
    { method: 'plate print', name: 'spotted', target: 'flat', reference: 'plate', film_um: 3 },
  ],
};

async function said(value: unknown, ...words: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const doors = {
    readText: async () => JSON.stringify(value),
    say: (line: string) => out.push(line),
    complain: (line: string) => err.push(line),
  } as unknown as Doors;
  const code = await run(['kit', 'my-kit.json', ...words], doors, [registerKit], '0');
  return { code, out: out.join('\n').replaceAll(/[\u00a0\u202f\u2009]/g, ' '), err: err.join('\n') };
}

describe('waywright kit', () => {
  it('says of each target whether it can be proven, what limits it, and what to do', async () => {
    const { code, out } = await said(given);
    expect(code).toBe(0);
    expect(out).toContain(
      'within 11 µm by DIN 875 grade 0 (formula; numbers from memory: hold them against the standard)',
    );
    expect(out).toContain('Most of the doubt is the reference’s own error.');
    expect(out).toMatch(/Cheapest way to 4\.0 to 1: turn the square over and sweep its other side/);
    expect(out).toMatch(/the reference’s own error would have to come down to ± [\d.]+ µm/);
  });
  it('--json holds ratio, parts, steps and the cheapest betterment', async () => {
    const { proofs } = JSON.parse((await said(given, '--json')).out);
    expect(proofs[0]).toMatchObject({ target: 'facing', unit: 'urad', limited_by: 'reference' });
    expect(proofs[0].ratio).toBeCloseTo(proofs[0].room / proofs[0].doubt, 9);
    expect(proofs[0].cheapest.ratio).toBeGreaterThanOrEqual(4);
    expect(proofs[1].can).toBe('no');
  });
  it('bad input leaves with 2 and names the file and the field', async () => {
    const wrong = structuredClone(given);
    wrong.setups[0]!.reference = 'plate';
    const { code, out, err } = await said(wrong);
    expect([code, out]).toEqual([2, '']);
    expect(err).toBe('my-kit.json: setups[0].reference: "plate"; expected a square of the kit: square');
  });
});
