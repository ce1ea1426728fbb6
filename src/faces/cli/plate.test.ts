import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { runVerb } from '../../../tests/fixture/run-verb.ts';
import { registerPlate } from './plate.ts';

const worked = (): string => readFileSync('checks/data/cases/plate-2.json', 'utf8');

async function said(text: string, ...words: string[]) {
  const ran = await runVerb(registerPlate, ['plate', 'table.csv', ...words], text);
  return { ...ran, out: ran.out.replaceAll('\u00a0', ' ') };
}

describe('waywright plate', () => {
  it('--json prints one document, with the contract’s numbers', async () => {
    const { code, out, err } = await said(worked(), '--json');
    expect([code, err]).toEqual([0, '']);
    const answer = JSON.parse(out);
    // Case 2 of the independent solver.
    expect(answer.flatness_um.minimum_zone).toBeCloseTo(10.0767, 4);
    expect(answer.flatness_um.least_squares).toBeCloseTo(10.9273, 4);
    expect(answer.pattern).toBe('2-2');
    expect(answer.residual_um).toHaveLength(answer.points.length);
  });
  it('a table of points gives the same as JSON, and whole passes on request', async () => {
    const { points } = JSON.parse(worked()).input as {
      points: { x_mm: number; y_mm: number; z_um: number }[];
    };
    const table = ['x_mm;y_mm;z_um', ...points.map((p) => `${p.x_mm};${p.y_mm};${p.z_um}`)].join('\n');
    const answer = JSON.parse((await said(table, '--json', '--pass', '4')).out);
    expect(answer.flatness_um.minimum_zone).toBeCloseTo(10.0767, 4);
    expect(Math.max(...answer.stepped.passes)).toBe(3);
    // Nothing is left higher or lower than half a pass from the plane.
    expect(answer.stepped.after_um).toBeLessThanOrEqual(4 + 1e-9);
  });
  it('says how flat, what shape holds it, and what comes off where', async () => {
    const { code, out } = await said(worked());
    expect(code).toBe(0);
    expect(out).toContain('flat within 10.1 µm over 900 mm × 600 mm (minimum zone): two high and two low');
    expect(out).toMatch(/^ +900 +600 .* high$|^ +0 +0 .* low$/m);
  });
  it('points in one row, and a missing height, are refused by name', async () => {
    const row = [0, 1, 2, 3].map((x) => ({ x_mm: 100 * x, y_mm: 50 * x, z_um: x * x }));
    expect((await said(JSON.stringify({ kind: 'points', points: row }))).err).toBe(
      'table.csv: points: 4 points in one row as seen from above; expected points that span a surface; a single row is a line',
    );
    const short = await said('x_mm,y_mm,z_um\n0,0,1\n100,0,2\n0,100,3\n100,100,');
    expect([short.code, short.err]).toEqual([
      2,
      'table.csv: line 5: nothing under z_um; expected a value: one is missing here',
    ]);
  });
  it('eight lines of odd steps are refused, and a level grid with a list too short', async () => {
    const grid = {
      kind: 'grid',
      step_x_mm: 100,
      step_y_mm: 100,
      along_x_urad: [
        [1, 2],
        [3, 4],
      ],
      along_y_urad: [[1], [2]],
    };
    expect((await said(JSON.stringify(grid))).err).toContain(
      'along_x_urad[0]: a list of 2; expected 1 steps between the 2 columns of along_y_urad',
    );
  });
});
