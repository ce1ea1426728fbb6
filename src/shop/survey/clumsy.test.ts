import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { lineFromTable, lineInput } from '../../contract/line.ts';
import { plateInput } from '../../contract/plate.ts';
import { seededRandom } from '../../core/math/random.ts';
import { line } from './line.ts';
import { plate } from './plate.ts';

/** A bed of 20 steps of 200 mm, a hollow of some 12 µm, tilted by 140 µrad, read to 0.1 µrad with 1 µrad of noise. */
function bed(seed: number): number[] {
  const random = seededRandom(seed);
  const read = (angle: number) => Number((angle + random.normal(0, 1)).toFixed(1));
  return Array.from({ length: 20 }, (_, k) => read(140 + 1.6 * (k - 9.5)));
}
const angles = (angles_urad: readonly number[], more: Record<string, unknown> = {}) =>
  line(lineInput({ kind: 'angles', step_mm: 200, angles_urad, ...more }));
const codes = (answer: { warnings: readonly { code: string }[] }) =>
  answer.warnings.map((warning) => warning.code).filter((code) => code !== 'no doubt');
const heights = (heights_um: readonly number[], more: Record<string, unknown> = {}) =>
  line(
    lineInput({
      kind: 'heights',
      stations_mm: heights_um.map((_, k) => 100 * k),
      heights_um,
      ...more,
    }),
  );
/** Heights along a straightedge set up askew: 4.3 µm a station, a hollow, noise of 0.6 µm. */
function edge(seed: number): number[] {
  const random = seededRandom(seed);
  return Array.from({ length: 14 }, (_, k) =>
    Number((31 + 4.3 * k + 0.2 * (k - 6.5) ** 2 + random.normal(0, 0.6)).toFixed(1)),
  );
}

describe('a clean survey raises no suspicion', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('bed and edge %d', (seed) => {
    const there = bed(seed);
    const back = bed(seed + 100).toReversed();
    expect(codes(angles(there, { return_urad: back, reading_sd_urad: 1 }))).toEqual([]);
    expect(codes(heights(edge(seed)))).toEqual([]);
  });
  it('nor do the solver’s cases', () => {
    for (const k of [1, 2, 3, 4, 5]) {
      const read = (name: string) =>
        JSON.parse(readFileSync(`checks/data/cases/${name}-${k}.json`, 'utf8')).input;
      expect(codes(line(lineInput(read('line'))))).toEqual([]);
      expect(codes(plate(plateInput(read('plate'))))).toEqual([]);
    }
  });
});

describe('a clumsy survey is met with a word about what and where', () => {
  it('one reading ten times too large is named, with what it would be; it still counts', () => {
    const slipped = bed(3).with(6, Number((bed(3)[6]! * 10).toFixed(1)));
    const answer = angles(slipped);
    const [found] = answer.warnings;
    expect([found!.code, found!.path]).toEqual(['stands out', 'angles_urad[6]']);
    expect(found!.text.replaceAll('\u00a0', ' ')).toMatch(
      /^Step 7, from 1200 to 1400 mm: \+13\d\d\.\d µrad stands out.*Ten times too large\?/,
    );
    expect(answer.straightness_um.minimum_zone).toBeGreaterThan(100);
    const high = heights(edge(2).with(9, Number((edge(2)[9]! * 10).toFixed(1))));
    expect(high.warnings[0]).toMatchObject({ code: 'stands out', path: 'heights_um[9]' });
    expect(high.warnings[0]!.text).toContain('Station 900 mm');
    expect(high.warnings[0]!.text).toContain('Ten times too large?');
  });
  it('signs turned half way are named once, at the first', () => {
    const turned = bed(4).map((angle, k) => (k < 11 ? angle : -angle));
    const answer = angles(turned);
    expect(codes(answer)).toEqual(['signs turned from here']);
    expect(answer.warnings[0]).toMatchObject({ path: 'angles_urad[11]' });
    expect(answer.warnings[0]!.text).toContain(
      'Step 12, from 2200 to 2400 mm: from here on all signs look turned',
    );
    const edged = heights(edge(5).map((h, k) => (k < 8 ? h : -h)));
    expect(codes(edged)).toEqual(['signs turned from here']);
    expect(edged.warnings[0]).toMatchObject({ path: 'heights_um[8]' });
  });
  it('a run back that does not close says by how much, the drift that goes with it, and that both drop out', () => {
    const there = bed(6);
    const drifting = bed(60)
      .toReversed()
      .map((angle, k) => Number((angle + 0.9 * (20 + k)).toFixed(1)));
    const clean = angles(there, { return_urad: bed(60).toReversed(), reading_sd_urad: 1 });
    const answer = angles(
      there.map((angle, k) => angle + 0.9 * k),
      { return_urad: drifting, reading_sd_urad: 1 },
    );
    expect(codes(answer)).toEqual(['does not close']);
    expect(answer.closure).toMatchObject({ closes: false });
    expect(answer.closure!.drift_urad!).toBeCloseTo(0.9, 1);
    // The drift is taken out: the profile is that of the runs without it.
    for (const [k, um] of answer.endpoint_um.entries()) expect(um).toBeCloseTo(clean.endpoint_um[k]!, 1);
  });
  it('a place whose two readings are apart is named', () => {
    const back = bed(60).toReversed();
    const answer = angles(bed(6), { return_urad: back.with(4, back[4]! + 14), reading_sd_urad: 1 });
    const named = answer.warnings.find(
      (warning) => warning.path === 'angles_urad[15]' || warning.path === 'return_urad[4]',
    );
    expect(named?.text).toContain('Step 16, from 3000 to 3200 mm');
  });
  it('a run back listed in the order of the run there, or with its signs turned, is suggested', () => {
    const there = bed(7);
    expect(codes(angles(there, { return_urad: bed(70) }))).toContain('run back in order there');
    const turned = bed(70)
      .toReversed()
      .map((angle) => -angle);
    expect(codes(angles(there, { return_urad: turned }))).toContain('run back with signs turned');
  });
  it('a station missing from the row is named', () => {
    const list = edge(9);
    const answer = line(
      lineInput({
        kind: 'heights',
        stations_mm: list.map((_, k) => 100 * k).toSpliced(5, 1),
        heights_um: list.toSpliced(5, 1),
      }),
    );
    expect(codes(answer)).toEqual(['station missing']);
    expect(answer.warnings[0]).toMatchObject({ path: 'stations_mm[5]' });
    expect(answer.warnings[0]!.text).toContain('500 mm is missing');
  });
  it('mixed units in a pasted column: read as written, and said; a finer number among coarse ones is asked about', () => {
    const rows = edge(2).map((h, k) => `${100 * k}\t${h}`);
    const thou = rows.with(4, '400\t2 thou').join('\n');
    const pasted = lineFromTable(`station [mm]\theight [um]\n${thou}`);
    const [found] = line(pasted.input, pasted).warnings.filter((warning) => warning.code === 'mixed units');
    expect(found!.path).toBe('line 6');
    expect(found!.text.replaceAll('\u00a0', ' ')).toContain(
      '“2 thou” has a unit of its own and was taken as +50.8 µm',
    );
    const mm = lineFromTable(
      `station [mm]\theight [um]\n${rows.with(7, `700\t${(edge(2)[7]! / 1000).toFixed(4)}`).join('\n')}`,
    );
    const fine = line(mm.input, mm).warnings[0]!;
    expect([fine.code, fine.path]).toEqual(['other unit', 'line 9']);
  });
  it('a surface: one height ten times too large, and a place missing from the grid', () => {
    const { points } = JSON.parse(readFileSync('checks/data/cases/plate-3.json', 'utf8')).input;
    const slipped = points.map((point: { z_um: number }, k: number) =>
      k === 40 ? { ...point, z_um: point.z_um * 10 } : point,
    );
    const answer = plate(plateInput({ kind: 'points', points: slipped.toSpliced(100, 1) }));
    expect(codes(answer)).toEqual(['stands out', 'station missing']);
    expect(answer.warnings[0]).toMatchObject({ path: 'points[40].z_um' });
    expect(answer.warnings[0]!.text).toContain('Ten times too large?');
    expect(answer.warnings[1]!.text).toContain(`x ${points[100].x_mm} y ${points[100].y_mm} mm`);
  });
  it('a grid of levels: the loops about a bad step do not close, and the step is named', () => {
    const random = seededRandom(11);
    const z = (i: number, k: number) => 0.8 * (i - 2) ** 2 - 0.5 * k * i;
    const read = (rise_um: number, step: number) =>
      Number(((1000 * rise_um) / step + random.normal(0, 0.5)).toFixed(1));
    const along_x_urad = [0, 1, 2, 3].map((k) => [0, 1, 2, 3].map((i) => read(z(i + 1, k) - z(i, k), 150)));
    const along_y_urad = [0, 1, 2, 3, 4].map((i) => [0, 1, 2].map((k) => read(z(i, k + 1) - z(i, k), 120)));
    const grid = {
      kind: 'grid',
      step_x_mm: 150,
      step_y_mm: 120,
      along_x_urad,
      along_y_urad,
      reading_sd_urad: 0.5,
    };
    expect(codes(plate(plateInput(grid)))).toEqual([]);
    along_x_urad[2]![1]! += 9;
    const answer = plate(plateInput({ ...grid, along_x_urad }));
    expect(answer.warnings[0]).toMatchObject({ code: 'does not fit', path: 'along_x_urad[2][1]' });
    const open = answer.warnings
      .filter((warning) => warning.code === 'does not close')
      .map((warning) => warning.path);
    expect(open).toEqual(['loop 2, 2', 'loop 2, 3']);
  });
});
