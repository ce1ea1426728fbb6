import { describe, expect, it } from 'vitest';
import { lineInput } from '../../contract/line.ts';
import { line } from '../../shop/survey/line.ts';
import { edgeBend } from './edge-bend.ts';

/** Source of the numbers: steel 1000 × 50 mm on its ends sags 22.91136979 µm, 1000 × 60 mm bows 11.979 µm by 0.5 K (beam tables' formulae; checks/sums-sag, sums-temperature). */
const edge = { length_mm: 1000, depth_mm: 50, material: 'steel' } as const;
const stations_mm = [0, 250, 500, 750, 1000];

describe('the bend of a straightedge at its stations', () => {
  it('on its ends: nothing there, 22.911 µm down in the middle, 57/80 of that at a quarter', () => {
    const { um } = edgeBend({ ...edge, support_mm: 0 }, stations_mm);
    expect(um[0]!).toBeCloseTo(0, 9);
    expect(um[2]!).toBeCloseTo(-22.91136979, 6);
    expect(um[1]!).toBeCloseTo((-22.91136979 * 57) / 80, 6);
    expect(um[3]!).toBeCloseTo(um[1]!, 9);
  });
  it('on the points of least sag the ends stand level with the middle, 0.476 µm at most', () => {
    const { um } = edgeBend(edge, stations_mm);
    expect(um[0]!).toBeCloseTo(um[2]!, 6);
    expect(Math.max(...um.map(Math.abs))).toBeLessThan(0.476);
  });
  it('a warmer top bows the middle up, and its doubt comes along', () => {
    const warm = { ...edge, depth_mm: 60, support_mm: 223.149, warmer_K: 0.5, warmer_sd_K: 0.1 };
    const cold = edgeBend({ ...warm, warmer_K: 0, warmer_sd_K: 0 }, stations_mm);
    const { um, causes_um } = edgeBend(warm, stations_mm);
    expect(um[2]! - cold.um[2]!).toBeCloseTo(11.979167, 5);
    expect(um[0]! - cold.um[0]!).toBeCloseTo(0, 9);
    expect(causes_um.at(-1)![2]!).toBeCloseTo(11.979167 / 5, 5);
  });
});

describe('line with a straightedge', () => {
  const way = [0, 3, 8, 3, 0];
  const bent = edgeBend({ ...edge, support_mm: 0 }, stations_mm).um;
  const asked = (more: object) =>
    lineInput({ kind: 'heights', stations_mm, heights_um: way.map((um, i) => um - bent[i]!), ...more });
  it('gives the way itself, where without it the way reads too proud in the middle', () => {
    const found = line(asked({ straightedge: { ...edge, support_mm: 0 }, reading_sd_um: 0.5 }));
    for (const [i, um] of found.endpoint_um.entries()) expect(um).toBeCloseTo(way[i]!, 9);
    expect(found.edge_bend_um).toEqual(bent);
    const raw = line(asked({ reading_sd_um: 0.5 }));
    expect(raw.endpoint_um[2]!).toBeCloseTo(8 + 22.911, 2);
    // The modulus is known to 4 in 210: that share of the sag is doubt.
    const own = Math.hypot(raw.sd!.endpoint_um[2]!, (22.91136979 * 4) / 210);
    expect(found.sd!.endpoint_um[2]!).toBeCloseTo(own, 6);
  });
  it('turning the edge about its long axis leaves its sag in the mean, and it is taken out there too', () => {
    const form = [0, 1, -2, 1.5, 0];
    const read = (side: 1 | -1) => way.map((um, i) => um - bent[i]! + side * form[i]!);
    const found = line(
      lineInput({
        kind: 'heights',
        stations_mm,
        heights_um: read(1),
        reversed_um: read(-1),
        straightedge: { ...edge, support_mm: 0 },
      }),
    );
    for (const [i, um] of found.endpoint_um.entries()) expect(um).toBeCloseTo(way[i]!, 9);
  });
  it('refuses a straightedge that is too short, one on a horizontal line, and supports past its middle', () => {
    const short = () => asked({ straightedge: { ...edge, length_mm: 900 } });
    expect(short).toThrow(/straightedge\.length_mm: 900, from 50 to 950 mm; expected .* station 0 mm/);
    expect(() => asked({ straightedge: edge, direction: 'horizontal' })).toThrow(/expected a vertical line/);
    expect(() => asked({ straightedge: { ...edge, support_mm: 600 } })).toThrow(
      /at most half the length, 500/,
    );
    expect(() => asked({ straightedge: { ...edge, material: 'glass' } })).toThrow(/straightedge\.material/);
  });
});
