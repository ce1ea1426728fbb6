import { describe, expect, it } from 'vitest';
import { solveWithHighs } from '../src/adapters/solver/highs.ts';
import { seededRandom } from '../src/core/math/random.ts';
import { lineZone } from '../src/core/survey/line-zone.ts';
import { type PointLists, planeZone } from '../src/core/survey/plane-zone.ts';
import { expectWithin } from './near.ts';

/**
 * Source: HiGHS, an independent solver, on the linear program of the minimum zone: least hi − lo with lo ≤ z − a x − b y ≤ hi at every point.
 * Computed by both each time. HiGHS stops within 1e-7, so agreement is to a millionth of the heights.
 */
async function highsWidth({ x_mm, y_mm, z_um }: PointLists): Promise<number> {
  const free = { low: -Infinity, high: Infinity };
  const answer = await solveWithHighs({
    columns: [
      { name: 'hi', cost: 1, ...free },
      { name: 'lo', cost: -1, ...free },
      { name: 'a', cost: 0, ...free },
      { name: 'b', cost: 0, ...free },
    ],
    rows: Array.from(z_um).flatMap((z, i) => {
      const tilt = [['a', x_mm[i]! / 100] as const, ['b', y_mm[i]! / 100] as const];
      return [
        { name: `h${i}`, terms: [['hi', 1] as const, ...tilt], low: z, high: Infinity },
        { name: `l${i}`, terms: [['lo', 1] as const, ...tilt], low: -Infinity, high: z },
      ];
    }),
  });
  if (answer.kind !== 'found') throw new Error(answer.kind);
  return answer.cost;
}

/** Sets of every sort that a shop hands in: strewn points, grids of whole microns (full of ties), rows, clusters, repeated places. */
function drawnSet(seed: number): PointLists {
  const random = seededRandom(seed);
  const n = 4 + Math.floor(random.even() * 30);
  const x_mm: number[] = [];
  const y_mm: number[] = [];
  const z_um: number[] = [];
  const sort = seed % 4;
  for (let i = 0; i < n; i++) {
    const x = sort === 0 ? 900 * random.even() : 100 * (i % 5);
    const y = sort === 0 ? 600 * random.even() : 100 * Math.floor(i / 5);
    x_mm.push(sort === 3 ? 100 * Math.floor(4 * random.even()) : x);
    y_mm.push(sort === 3 ? 100 * Math.floor(4 * random.even()) : y);
    const z = 20 * random.normal() + 0.05 * x - 0.02 * y;
    z_um.push(sort === 1 ? Math.round(z / 10) : sort === 2 ? Math.round(z) : z);
  }
  // Three corners, so that the points always span a surface.
  return { x_mm: [...x_mm, 0, 900, 0], y_mm: [...y_mm, 0, 0, 700], z_um: [...z_um, 1, -2, 3] };
}

describe('the exact minimum zone and HiGHS', () => {
  it('planes: 200 sets of up to 36 points', async () => {
    for (let seed = 1; seed <= 200; seed++) {
      const points = drawnSet(seed);
      const { width_um, contacts, gap_um } = planeZone(points);
      expectWithin(width_um, await highsWidth(points), 1e-5, `seed ${seed}`);
      expect(gap_um, `seed ${seed}`).toBeLessThan(1e-9);
      expectHeld(points, width_um, contacts, seed);
    }
  });
  it('lines: 100 sets, as planes over a strip that cannot lean sideways', async () => {
    for (let seed = 1; seed <= 100; seed++) {
      const random = seededRandom(seed);
      const n = 3 + Math.floor(random.even() * 20);
      const x = Array.from({ length: n }, (_, i) => 50 * i + (seed % 2 ? 20 * random.even() : 0));
      const h = x.map(() => (seed % 3 ? 10 * random.normal() : Math.round(3 * random.normal())));
      const zone = lineZone(x, h);
      // Every height twice, at both edges of the strip: the plane gains nothing by leaning.
      const strip = {
        x_mm: [...x, ...x],
        y_mm: [...x.map(() => 0), ...x.map(() => 100)],
        z_um: [...h, ...h],
      };
      expectWithin(zone.width_um, await highsWidth(strip), 1e-5, `seed ${seed}`);
      expectHeld({ x_mm: x, y_mm: x.map(() => 0), z_um: h }, zone.width_um, zone.contacts, seed);
    }
  });
});

/** The proof that needs no solver: the two sides' weighed places are one place, and their weighed heights are the width apart. */
function expectHeld(
  { x_mm, y_mm, z_um }: PointLists,
  width_um: number,
  contacts: ReturnType<typeof planeZone>['contacts'],
  seed: number,
): void {
  const difference = (of: (i: number) => number) =>
    contacts.reduce((sum, one) => sum + (one.side === 'high' ? 1 : -1) * one.share * of(one.index), 0);
  expectWithin(
    difference((i) => x_mm[i]!),
    0,
    1e-7,
    `seed ${seed}`,
  );
  expectWithin(
    difference((i) => y_mm[i]!),
    0,
    1e-7,
    `seed ${seed}`,
  );
  expectWithin(
    difference((i) => z_um[i]!),
    width_um,
    1e-8,
    `seed ${seed}`,
  );
  expect(contacts.length, `seed ${seed}`).toBeLessThanOrEqual(4);
}
