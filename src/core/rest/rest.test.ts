import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { displacementAlong, type Pose } from '../body/displacement.ts';
import type { Pad } from '../body/pad.ts';
import { type Slide, zonesOf } from '../body/slide.ts';
import { dot, unit, type Vector } from '../body/vector.ts';
import { seededRandom } from '../math/random.ts';
import { equilibrium } from './equilibrium.ts';
import { foundation, heldForce, poseOf } from './foundation.ts';
import { wrenchOf } from './load.ts';
import { type RestInput, rest } from './rest.ts';

const pad = (name: string, centre_mm: Vector, normal: Vector, zones: number, width_mm = 30): Pad => ({
  name,
  centre_mm,
  normal,
  length_mm: 400,
  width_mm,
  zones,
  material: 'iron',
});
const half = Math.SQRT1_2;
const up: Vector = [0, 0, 1];
const down: Vector = [0, 0, -1];
const saddle = (zones: number): Slide => ({
  name: 'saddle',
  free: 'x',
  pads: [
    pad('front', [0, -11, 0], [0, -half, half], zones),
    pad('rear', [0, 11, 0], [0, half, half], zones),
    pad('flat', [17, 260, 0], up, zones, 55),
  ],
});
const ground = { stiffness_N_per_mm3: 50, film_um: 3 };
const randomGaps = (slide: Slide, seed: number, mean = 8, sd = 6): number[][] => {
  const random = seededRandom(seed);
  return slide.pads.map((p) => Array.from({ length: p.zones }, () => random.normal(mean, sd)));
};
const poseFrom = (answer: { shift_um: readonly number[]; turn_urad: Vector }): Pose => ({
  t_um: [0, answer.shift_um[0]!, answer.shift_um[1]!],
  turn_urad: answer.turn_urad,
});

/** Energy written out from the slide's own data, N·µm. */
function energyOf(input: RestInput, pose: Pose): number {
  const gaps = input.gaps_um.flat();
  const springs = zonesOf(input.slide).reduce((sum, zone, z) => {
    const gap = Math.min(0, gaps[z]! + displacementAlong(pose, zone.normal, zone.centre_mm));
    return sum + (0.5 * input.stiffness_N_per_mm3 * zone.area_mm2 * gap * gap) / 1000;
  }, 0);
  const { force_N, at_mm, direction } = input.load;
  return springs - force_N * displacementAlong(pose, unit(direction), at_mm);
}

describe('rest by hand', () => {
  it('a bridge on two supports shares the load by the lever and sinks by force over spring', () => {
    const bridge: Slide = { name: 'bridge', free: 'x', pads: [pad('way', [0, 0, 0], up, 2)] };
    // Middles of the zones at −100 and +100 mm; 900 N at +40: 0.3 and 0.7 of it. Spring 50 × 200 × 30 / 1000 = 300 N/µm.
    const load = { force_N: 900, at_mm: [40, 0, 33] as Vector, direction: down };
    const answer = rest({ slide: bridge, gaps_um: [[0, 5]], load, ...ground });
    expect(answer.converged).toBe(true);
    expect(answer.force_N[0]).toBeCloseTo(270, 8);
    expect(answer.force_N[1]).toBeCloseTo(630, 8);
    expect(answer.gap_um[0]).toBeCloseTo(-0.9, 10);
    expect(answer.gap_um[1]).toBeCloseTo(-2.1, 10);
    // z = −0.9 at −100 mm and −2.1 − 5 at +100: middle −4.0, and the plus end lower: about y +31 µrad.
    expect(answer.shift_um[1]).toBeCloseTo(-4, 10);
    expect(answer.turn_urad[1]).toBeCloseTo(31, 9);
    // One line of bearing holds neither the turn about itself nor the plan: these stay 0.
    expect([answer.shift_um[0], answer.turn_urad[0], answer.turn_urad[2]]).toEqual(
      [0, 0, 0].map(() => expect.closeTo(0, 12)),
    );
  });

  it('a V wedges: each 45° flank carries load over 2 cos 45°, and sinks by that over spring and cos 45°', () => {
    const vee: Slide = { name: 'vee', free: 'x', pads: saddle(2).pads.slice(0, 2) };
    const load = { force_N: 1000, at_mm: [0, 0, 50] as Vector, direction: down };
    const answer = rest({
      slide: vee,
      gaps_um: [
        [0, 0],
        [0, 0],
      ],
      load,
      ...ground,
    });
    // Four zones of 300 N/µm: 1000 / (4 × 0.70711) = 353.553 N each; gap −1.17851 µm; drop 1.66667 µm.
    for (const force of answer.force_N) expect(force).toBeCloseTo(353.553, 3);
    expect(answer.shift_um[1]).toBeCloseTo(-5 / 3, 9);
    expect(answer.shift_um[0]).toBeCloseTo(0, 12);
  });

  it('a push across a V goes to one flank: half the push over cos 45° more there, less on the other', () => {
    const vee: Slide = { name: 'vee', free: 'x', pads: saddle(2).pads.slice(0, 2) };
    // 1000 down and 400 toward +y through the line where the two normals meet: y 0, z −11, as far below as the middles are out, at 45°.
    const force_N = Math.hypot(1000, 400);
    const load = { force_N, at_mm: [0, 0, -11] as Vector, direction: [0, 400, -1000] as Vector };
    const answer = rest({
      slide: vee,
      gaps_um: [
        [0, 0],
        [0, 0],
      ],
      load,
      ...ground,
    });
    // The rear flank's normal is (0, +, +): it lets go under a push to +y; front carries (1000 + 400) / 2 / 0.70711 = 989.949.
    expect(answer.force_N[0]! + answer.force_N[1]!).toBeCloseTo(989.949, 2);
    expect(answer.force_N[2]! + answer.force_N[3]!).toBeCloseTo(424.264, 2);
  });

  it('a base loaded beyond one corner lifts the opposite pad and stands on three', () => {
    const foot = (name: string, x: number, y: number): Pad => ({
      ...pad(name, [x, y, 0], up, 1, 40),
      length_mm: 60,
    });
    const base: Slide = {
      name: 'base',
      free: 'x',
      pads: [foot('a', -200, -150), foot('b', 200, -150), foot('c', -200, 150), foot('d', 200, 150)],
    };
    const load = { force_N: 600, at_mm: [-90, -70, 200] as Vector, direction: down };
    const answer = rest({ slide: base, gaps_um: [[0], [0], [0], [9]], load, ...ground });
    expect(answer.gap_um[3]).toBeGreaterThan(0);
    expect(answer.force_N[3]).toBe(0);
    // Three feet: b = (200 − 90)/400, c = (150 − 70)/300 of the load, the rest on a.
    expect(answer.force_N[1]).toBeCloseTo((600 * 110) / 400, 8);
    expect(answer.force_N[2]).toBeCloseTo((600 * 80) / 300, 8);
    expect(answer.force_N[0]).toBeCloseTo(600 - 165 - 160, 8);
  });

  it('a slide hung clear of its way falls until it bears', () => {
    const slide = saddle(3);
    const load = { force_N: 800, at_mm: [9, 120, 100] as Vector, direction: down };
    const near = rest({ slide, gaps_um: randomGaps(slide, 3), load, ...ground });
    const raised = randomGaps(slide, 3).map((gaps, k) => gaps.map((g) => g + 500 * slide.pads[k]!.normal[2]));
    const far = rest({ slide, gaps_um: raised, load, ...ground });
    expect(far.shift_um[1]).toBeCloseTo(near.shift_um[1] - 500, 6);
    far.gap_um.forEach((gap, z) => {
      expect(gap).toBeCloseTo(near.gap_um[z]!, 6);
    });
  });

  it.each<[string, Vector, Vector]>([
    ['lifts', [0, 100, 50], up],
    ['stands outside the pads', [0, 300, 50], down],
    ['stands past the end', [230, 100, 50], down],
  ])('a load that %s the slide off finds no rest', (_, at_mm, direction) => {
    const slide = saddle(4);
    const answer = rest({
      slide,
      gaps_um: randomGaps(slide, 5),
      load: { force_N: 500, at_mm, direction },
      ...ground,
    });
    expect(answer.converged).toBe(false);
  });
});

/** Every subset of zones as the pressed ones: the one whose balance presses just those and opens the others is the rest. */
function bySubsets(input: RestInput): number[] | undefined {
  const zones = zonesOf(input.slide);
  const gaps = input.gaps_um.flat();
  const rows = zones.map((zone) =>
    [1, 2, 3, 4, 5].map((axis) => {
      const unitPose = [0, 0, 0, 0, 0, 0].map((_, i) => (i === axis ? 1 : 0));
      const pose = {
        t_um: unitPose.slice(0, 3) as unknown as Vector,
        turn_urad: unitPose.slice(3) as unknown as Vector,
      };
      return displacementAlong(pose, zone.normal, zone.centre_mm);
    }),
  );
  const { at_mm: p, force_N } = input.load;
  const d = unit(input.load.direction);
  const moments = [p[1] * d[2] - p[2] * d[1], p[2] * d[0] - p[0] * d[2], p[0] * d[1] - p[1] * d[0]];
  const force = [d[1], d[2], ...moments.map((m) => m / 1000)].map((part) => part * force_N);
  for (let subset = 1; subset < 2 ** zones.length; subset++) {
    const pressed = zones.flatMap((_, z) => ((subset >> z) & 1 ? [z] : []));
    if (pressed.length < 5) continue;
    const k = (z: number) => (input.stiffness_N_per_mm3 * zones[z]!.area_mm2) / 1000;
    const H = Matrix.zeros(5, 5);
    const right = [...force];
    for (const z of pressed)
      for (let i = 0; i < 5; i++) {
        right[i]! -= k(z) * rows[z]![i]! * gaps[z]!;
        for (let j = 0; j < 5; j++) H.set(i, j, H.get(i, j) + k(z) * rows[z]![i]! * rows[z]![j]!);
      }
    let q: number[];
    try {
      q = solve(H, Matrix.columnVector(right)).to1DArray();
    } catch {
      continue; // these zones do not hold the slide
    }
    const left = H.mmul(Matrix.columnVector(q)).sub(Matrix.columnVector(right)).norm('max');
    if (left > 1e-7 * force_N) continue; // they hardly hold it: not solved
    const after = rows.map((row, z) => gaps[z]! + row.reduce((sum, part, i) => sum + part * q[i]!, 0));
    if (after.every((gap, z) => gap < 0 === pressed.includes(z))) return after;
  }
  return undefined;
}

describe('rest against every way it could touch', () => {
  it.each(Array.from({ length: 12 }, (_, seed) => seed + 1))(
    'seed %d: 9 zones, all 512 subsets tried',
    (seed) => {
      const slide = saddle(3);
      const random = seededRandom(seed * 77);
      const load = {
        force_N: 900,
        at_mm: [random.normal(0, 40), 120 + random.normal(0, 30), 90] as Vector,
        direction: [0, random.normal(0, 0.1), -1] as Vector,
      };
      const input: RestInput = { slide, gaps_um: randomGaps(slide, seed), load, ...ground };
      const expected = bySubsets(input);
      expect(expected).toBeDefined();
      const answer = rest(input);
      expect(answer.converged).toBe(true);
      answer.gap_um.forEach((gap, z) => {
        expect(gap).toBeCloseTo(expected![z]!, 7);
      });
    },
  );
});

const restCase = fc.record({
  seed: fc.integer({ min: 1, max: 1e6 }),
  x: fc.double({ min: -90, max: 90, noNaN: true }),
  y: fc.double({ min: 60, max: 180, noNaN: true }),
  sd: fc.double({ min: 0.5, max: 20, noNaN: true }),
});
const inputOf = (c: { seed: number; x: number; y: number; sd: number }): RestInput => {
  const slide = saddle(6);
  const load = { force_N: 1200, at_mm: [c.x, c.y, 110] as Vector, direction: down };
  return { slide, gaps_um: randomGaps(slide, c.seed, 8, c.sd), load, ...ground };
};

describe('laws of rest', () => {
  it('no step of the search raises the energy, and the last pose has the least', () => {
    fc.assert(
      fc.property(restCase, (c) => {
        const input = inputOf(c);
        const springs = foundation(input.slide, input.stiffness_N_per_mm3);
        const force = heldForce(springs, wrenchOf(input.load));
        let last = Infinity;
        for (let most_steps = 0; ; most_steps++) {
          const found = equilibrium(springs, input.gaps_um.flat(), force, { most_steps });
          const q = poseOf(springs, found.coordinates);
          const energy = energyOf(input, { t_um: [q[0], q[1], q[2]], turn_urad: [q[3], q[4], q[5]] });
          expect(energy).toBeLessThanOrEqual(last + 1e-9 * Math.abs(energy));
          last = energy;
          if (found.converged) break;
          expect(most_steps).toBeLessThan(60);
        }
        const pose = poseFrom(rest(input));
        const random = seededRandom(c.seed + 1);
        for (let k = 0; k < 20; k++) {
          const moved: Pose = {
            t_um: [0, pose.t_um[1] + random.normal(0, 0.3), pose.t_um[2] + random.normal(0, 0.3)],
            turn_urad: pose.turn_urad.map((w) => w + random.normal(0, 2)) as unknown as Vector,
          };
          expect(energyOf(input, moved)).toBeGreaterThan(last);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('the zones carry the load: forces and moments balance', () => {
    fc.assert(
      fc.property(restCase, (c) => {
        const input = inputOf(c);
        const answer = rest(input);
        const zones = zonesOf(input.slide);
        const sum = (of: (z: number) => number) =>
          zones.reduce((s, _, z) => s + answer.force_N[z]! * of(z), 0);
        expect(sum((z) => zones[z]!.normal[2])).toBeCloseTo(1200, 6);
        expect(sum((z) => zones[z]!.normal[1])).toBeCloseTo(0, 6);
        expect(sum((z) => zones[z]!.normal[2] * zones[z]!.centre_mm[0]) / 1200).toBeCloseTo(c.x, 6);
      }),
      { numRuns: 60 },
    );
  });

  it('mirrored end for end, it rests mirrored: turns about y and z change sign, the rest stays', () => {
    fc.assert(
      fc.property(restCase, (c) => {
        const input = inputOf(c);
        const mirrored: RestInput = {
          ...input,
          slide: {
            ...input.slide,
            pads: input.slide.pads.map((p) => ({
              ...p,
              centre_mm: [-p.centre_mm[0], p.centre_mm[1], p.centre_mm[2]],
            })),
          },
          gaps_um: input.gaps_um.map((gaps) => [...gaps].reverse()),
          load: { ...input.load, at_mm: [-c.x, c.y, 110] },
        };
        const here = rest(input);
        const there = rest(mirrored);
        expect(there.turn_urad[0]).toBeCloseTo(here.turn_urad[0], 5);
        expect(there.turn_urad[1]).toBeCloseTo(-here.turn_urad[1], 5);
        expect(there.turn_urad[2]).toBeCloseTo(-here.turn_urad[2], 5);
        expect(there.shift_um[1]).toBeCloseTo(here.shift_um[1], 5);
        expect(there.bearing_fraction).toBe(here.bearing_fraction);
      }),
      { numRuns: 40 },
    );
  });

  it('turned a quarter about z, travel along y, it rests turned: shifts are then along x and z', () => {
    const turned = (v: Vector): Vector => [-v[1], v[0], v[2]];
    fc.assert(
      fc.property(restCase, (c) => {
        const input = inputOf(c);
        const there = rest({
          ...input,
          slide: {
            ...input.slide,
            free: 'y',
            pads: input.slide.pads.map((p) => ({
              ...p,
              centre_mm: turned(p.centre_mm),
              normal: turned(p.normal),
            })),
          },
          load: { ...input.load, at_mm: turned(input.load.at_mm), direction: turned(input.load.direction) },
        });
        const here = rest(input);
        expect(there.shift_um[0]).toBeCloseTo(-here.shift_um[0], 5);
        expect(there.shift_um[1]).toBeCloseTo(here.shift_um[1], 5);
        turned(here.turn_urad).forEach((w, i) => {
          expect(there.turn_urad[i]).toBeCloseTo(w, 5);
        });
      }),
      { numRuns: 40 },
    );
  });

  it('where it started does not matter to what is pressed, even where it balances on a knife-edge', () => {
    fc.assert(
      fc.property(restCase, (c) => {
        const input = inputOf(c);
        const random = seededRandom(c.seed);
        const start = [0, 1, 2, 3, 4, 5].map(() => random.normal(0, 40)) as unknown as [
          number,
          number,
          number,
          number,
          number,
          number,
        ];
        const warm = rest(input, start);
        rest(input).gap_um.forEach((gap, z) => {
          expect(Math.min(warm.gap_um[z]!, 0)).toBeCloseTo(Math.min(gap, 0), 6);
        });
      }),
      { numRuns: 40 },
    );
  });

  it('gaps that a rigid move explains are closed by that move', () => {
    const slide = saddle(5);
    const pose: Pose = { t_um: [0, 4, -13], turn_urad: [21, -17, 33] };
    const zones = zonesOf(slide);
    const gaps = zones.map((zone) => -displacementAlong(pose, zone.normal, zone.centre_mm));
    const load = { force_N: 1e-6, at_mm: [5, 100, 50] as Vector, direction: down };
    const gaps_um = [0, 1, 2].map((k) => gaps.slice(5 * k, 5 * k + 5));
    const answer = rest({ slide, gaps_um, load, ...ground });
    expect(answer.shift_um[0]).toBeCloseTo(4, 5);
    expect(answer.shift_um[1]).toBeCloseTo(-13, 5);
    pose.turn_urad.forEach((w, i) => {
      expect(answer.turn_urad[i]).toBeCloseTo(w, 5);
    });
    expect(dot(pose.turn_urad, pose.turn_urad)).toBeGreaterThan(0);
  });

  it('a light load on wide gaps still finds its rest, though forces are then small differences of large ones', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const slide = saddle(3);
      const load = { force_N: 0.3, at_mm: [7, 120, 40] as Vector, direction: down };
      const gaps_um = randomGaps(slide, seed, 900, 600);
      expect(rest({ slide, gaps_um, load, ...ground }).converged, `seed ${seed}`).toBe(true);
    }
  });

  it('refuses gaps that do not fit the zones', () => {
    const slide = saddle(3);
    const load = { force_N: 100, at_mm: [0, 100, 0] as Vector, direction: down };
    expect(() => rest({ slide, gaps_um: [[1, 2, 3]], load, ...ground })).toThrow(
      /3 gaps; expected one for each of 9 zones/,
    );
  });
});
