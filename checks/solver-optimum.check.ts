import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveWithHighs } from '../src/adapters/solver/highs.ts';
import type { Feature, Target } from '../src/core/body/feature.ts';
import type { Pad } from '../src/core/body/pad.ts';
import type { Vector } from '../src/core/body/vector.ts';
import { planDepth } from '../src/core/plan/depth.ts';
import { passesCost, planPasses } from '../src/core/plan/passes.ts';
import { planProblem } from '../src/core/plan/problem.ts';
import { expectWithin } from './near.ts';

/*
 * Source: no publication; the least cost is found here a second time by ways that need no optimiser. Depths: every vertex of
 * the region (as many tight limits as unknowns, each set solved by elimination). Passes: every combination counted through.
 * Geometry is worked out here again from the contract's formulas.
 */

/** A small V and flat (or two V's), lopsided on purpose; travel along x. */
interface Small {
  readonly pads: readonly Pad[];
  readonly features: readonly Feature[];
  readonly targets: readonly Target[];
  readonly values: Readonly<Record<string, number>>;
  readonly pass_um: number;
}

const pad = (
  name: string,
  normal: Vector,
  centre_mm: Vector,
  length_mm: number,
  width_mm: number,
  stock_um: number,
): Pad => ({
  name,
  normal,
  centre_mm,
  length_mm,
  width_mm,
  zones: 2,
  material: 'liner',
  stock_um,
});

const turns: readonly Feature[] = [
  { name: 'facing', kind: 'turn', axis: 'z' },
  { name: 'across', kind: 'turn', axis: 'x' },
  { name: 'along', kind: 'turn', axis: 'y' },
];

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Invented slides: flank angles, sizes, where the features are, which of them have an aim. */
const small: fc.Arbitrary<Small> = fc
  .record({
    lean: fc.tuple(between(0.5, 1.1), between(0.5, 1.1)),
    length: between(260, 430),
    width: fc.tuple(between(21, 33), between(22, 34), between(45, 75)),
    back: between(180, 320),
    off: fc.tuple(between(-60, 60), between(-60, 60), between(-60, 60)),
    aimed: fc.tuple(fc.boolean(), fc.boolean(), fc.boolean()),
    stock: between(4, 60),
    pass_um: between(7, 14),
    half: between(9, 22),
  })
  .map(({ lean, length, width, back, off, aimed, stock, pass_um, half }) => ({
    pads: [
      pad('outer', [0, -Math.sin(lean[0]), Math.cos(lean[0])], [0, -13, 1], length, width[0], stock),
      pad('inner', [0, Math.sin(lean[1]), Math.cos(lean[1])], [4, 11, -2], length, width[1], stock),
      pad('flat', [0, 0, 1], [-7, back, 3], length * 0.9, width[2], stock),
    ],
    features: turns,
    targets: turns.map(({ name }, i) => ({
      feature: name,
      low: -half,
      high: half,
      ...(aimed[i] ? { aim: half / 3 } : {}),
    })),
    values: Object.fromEntries(turns.map(({ name }, i) => [name, off[i]!])),
    pass_um,
  }));

/** n·u over [t_y, t_z, ω_x, ω_y, ω_z] and the area of each zone: two a pad. */
function zonesOf({ pads }: Small) {
  return pads.flatMap(({ normal: [, ny, nz], centre_mm: [cx, y, z], length_mm, width_mm }) =>
    [-0.25, 0.25].map((share) => {
      const x = cx + share * length_mm;
      return {
        row: [ny, nz, (y * nz - z * ny) / 1000, (-x * nz) / 1000, (x * ny) / 1000],
        area: (length_mm * width_mm) / 2,
      };
    }),
  );
}
const turnPlace: Record<string, number> = { across: 2, along: 3, facing: 4 };

const times = (row: readonly number[], u: readonly number[]): number =>
  row.reduce((sum, part, j) => sum + part * u[j]!, 0);

/** Elimination with the largest pivot of each column; undefined when the rows do not settle all unknowns. */
function solveSquare(rows: readonly (readonly number[])[], right: readonly number[]): number[] | undefined {
  const n = rows.length;
  const m = rows.map((row, i) => [...row, right[i]!]);
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(m[i]![k]!) > Math.abs(m[best]![k]!)) best = i;
    if (Math.abs(m[best]![k]!) < 1e-9) return undefined;
    [m[k], m[best]] = [m[best]!, m[k]!];
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const by = m[i]![k]! / m[k]![k]!;
      for (let j = k; j <= n; j++) m[i]![j]! -= by * m[k]![j]!;
    }
  }
  return m.map((row, k) => row[n]! / row[k]!);
}

/** Every choice of `count` of the numbers 0 … n − 1. */
function* choices(n: number, count: number, from = 0): Generator<number[]> {
  if (count === 0) yield [];
  else
    for (let i = from; i <= n - count; i++)
      for (const rest of choices(n, count - 1, i + 1)) yield [i, ...rest];
}

interface Limit {
  readonly row: readonly number[];
  readonly low: number;
  readonly high: number;
}

/** Least volume, mm³, over all vertices; undefined when no vertex is allowed. */
function leastVolume(problem: Small): number | undefined {
  const zones = zonesOf(problem);
  const limits: Limit[] = [
    ...zones.map(({ row }, z) => ({ row, low: -problem.pads[z >> 1]!.stock_um!, high: 0 })),
    ...problem.targets.map(({ feature, low, high, aim }) => {
      const now = problem.values[feature]!;
      const row = [0, 0, 0, 0, 0];
      row[turnPlace[feature]!] = 1;
      return { row, low: (aim ?? low) - now, high: (aim ?? high) - now };
    }),
  ];
  const fixed = limits.filter((limit) => limit.low === limit.high);
  const sides = limits
    .filter((limit) => limit.low !== limit.high)
    .flatMap(({ row, low, high }) => [
      { row, at: low },
      { row, at: high },
    ]);
  let least: number | undefined;
  for (const tight of choices(sides.length, 5 - fixed.length)) {
    const u = solveSquare(
      [...fixed.map((limit) => limit.row), ...tight.map((i) => sides[i]!.row)],
      [...fixed.map((limit) => limit.low), ...tight.map((i) => sides[i]!.at)],
    );
    if (!u) continue;
    const allowed = limits.every(({ row, low, high }) => {
      const value = times(row, u);
      return value >= low - 1e-7 && value <= high + 1e-7;
    });
    if (!allowed) continue;
    const volume = zones.reduce((sum, { row, area }) => sum - (area * times(row, u)) / 1000, 0);
    if (least === undefined || volume < least) least = volume;
  }
  return least;
}

/** The pose that even weights by area give, from the normal equations by elimination. One column of the answer a zone. */
function responses(problem: Small): number[][] {
  const zones = zonesOf(problem);
  const normal = Array.from({ length: 5 }, (_, i) =>
    Array.from({ length: 5 }, (_, j) =>
      zones.reduce((sum, { row, area }) => sum + area * row[i]! * row[j]!, 0),
    ),
  );
  return zones.map(
    ({ row, area }) =>
      solveSquare(
        normal,
        row.map((part) => -part * area),
      )!,
  );
}

/** Least cost of whole passes, every count up to `most` a zone tried; undefined when none does. */
function leastPasses(problem: Small, most: number): number | undefined {
  const zones = zonesOf(problem);
  const count = zones.length;
  const response = responses(problem);
  const meanArea = zones.reduce((sum, { area }) => sum + area, 0) / count;
  const passes = Array<number>(count).fill(0);
  let least: number | undefined;
  for (;;) {
    const cost = zones.reduce((sum, { area }, z) => sum + (area / meanArea) * passes[z]!, 0);
    if ((least === undefined || cost < least - 1e-12) && fits(problem, zones, response, passes)) least = cost;
    let z = 0;
    while (z < count && passes[z] === most) passes[z++] = 0;
    if (z === count) return least;
    passes[z]!++;
  }
}

function fits(
  problem: Small,
  zones: ReturnType<typeof zonesOf>,
  response: number[][],
  passes: readonly number[],
) {
  const depths = passes.map((m) => m * problem.pass_um);
  const pose = [0, 1, 2, 3, 4].map((j) => depths.reduce((sum, d, z) => sum + d * response[z]![j]!, 0));
  return (
    problem.targets.every(({ feature, low, high }) => {
      const then = problem.values[feature]! + pose[turnPlace[feature]!]!;
      return then >= low - 1e-9 && then <= high + 1e-9;
    }) &&
    zones.every(
      ({ row }, z) =>
        Math.abs(depths[z]! + times(row, pose)) <= problem.pass_um * (1 + 1e-9) &&
        depths[z]! <= problem.pads[z >> 1]!.stock_um! * (1 + 1e-9),
    )
  );
}

const planned = (problem: Small) =>
  planProblem(
    {
      slide: { name: 'small', free: 'x', pads: problem.pads },
      features: problem.features,
      targets: problem.targets,
    },
    problem.values,
    { liner: { um: problem.pass_um, sd_um: 2 } },
  );

describe('HiGHS against optima found without an optimiser', () => {
  it('depths: the least volume over all vertices, and no answer where there is no vertex', async () => {
    let answered = 0;
    let refused = 0;
    await fc.assert(
      fc.asyncProperty(small, async (problem) => {
        const least = leastVolume(problem);
        const found = await planDepth(planned(problem), solveWithHighs);
        expect(found.ok).toBe(least !== undefined);
        if (found.ok) {
          expectWithin(found.volume_mm3, least!, 1e-6 * Math.max(1, least!));
          answered++;
        } else refused++;
      }),
      { numRuns: 60, seed: 20311125 },
    );
    expect(answered).toBeGreaterThan(10);
    expect(refused).toBeGreaterThan(3);
  });

  it('passes: the least cost of every combination tried', async () => {
    const most = 6;
    let answered = 0;
    await fc.assert(
      fc.asyncProperty(small, async (problem) => {
        const plan = planned(problem);
        const found = await planPasses(plan, solveWithHighs, { gap: 0 });
        const least = leastPasses(problem, most);
        if (!found.ok) {
          expect(least).toBeUndefined();
          return;
        }
        expect(fits(problem, zonesOf(problem), responses(problem), found.passes)).toBe(true);
        expectWithin(found.cost, passesCost(plan, found.passes), 5e-10);
        if (Math.max(...found.passes) > most) {
          if (least !== undefined) expect(found.cost).toBeLessThanOrEqual(least + 1e-9);
          return;
        }
        expectWithin(found.cost, least!, 5e-10);
        answered++;
      }),
      { numRuns: 40, seed: 20311126 },
    );
    expect(answered).toBeGreaterThan(10);
  });
});
