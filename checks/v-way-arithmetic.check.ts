import { describe, it } from 'vitest';
import { solveWithHighs } from '../src/adapters/solver/highs.ts';
import { displacement, poseFromNumbers, rise, slope } from '../src/core/body/displacement.ts';
import type { Pad } from '../src/core/body/pad.ts';
import { settledPose, settling } from '../src/core/body/settle.ts';
import { type Slide, zoneVector } from '../src/core/body/slide.ts';
import { type AxisName, scale, type Vector } from '../src/core/body/vector.ts';
import { planDepth } from '../src/core/plan/depth.ts';
import { planProblem } from '../src/core/plan/problem.ts';
import { expectNear, expectPrinted, expectWithin } from './near.ts';

/*
 * Arithmetic of V-ways by hand. The rules are handbook and trade geometry (a slide sinks n / sin of the half angle; the yaw
 * recipe of the saddle); no published numbers were found, so all numbers here are derived, and each is worked in its line.
 */
const rad = (deg: number) => (deg * Math.PI) / 180;

/** A flank whose normal passes through the V's middle line (x axis), so that rolling about it moves no flank. */
function flank(name: string, y: number, z: number, length_mm = 400, zones = 8): Pad {
  const normal: Vector = [0, y, z];
  return { name, normal, centre_mm: scale(normal, 18), length_mm, width_mm: 27, zones, material: 'liner' };
}
const flat = (y_mm: number, length_mm = 400, zones = 8): Pad => ({
  name: 'flat',
  normal: [0, 0, 1],
  centre_mm: [0, y_mm, 0],
  length_mm,
  width_mm: 61,
  zones,
  material: 'liner',
});

/** A slide's V standing in a groove: the front wall, at your side, leans so that it faces the back. Angles from horizontal. */
const inGroove = (front_deg: number, back_deg: number): Slide => ({
  name: 'table',
  free: 'x',
  pads: [
    flank('front', Math.sin(rad(front_deg)), Math.cos(rad(front_deg))),
    flank('back', -Math.sin(rad(back_deg)), Math.cos(rad(back_deg))),
    flat(240),
  ],
});
/** A saddle riding a raised V: outer flank at the operator's side. */
const onRaisedV = (outer_deg: number, inner_deg: number, flat_y_mm = 200): Slide => ({
  name: 'saddle',
  free: 'x',
  pads: [
    flank('outer', -Math.sin(rad(outer_deg)), Math.cos(rad(outer_deg))),
    flank('inner', Math.sin(rad(inner_deg)), Math.cos(rad(inner_deg))),
    flat(flat_y_mm),
  ],
});

/** Settles after even cuts, µm: one depth a pad. */
function even(slide: Slide, depth_um: Record<string, number>) {
  const each = Object.fromEntries(
    slide.pads.map((pad) => [pad.name, Array(pad.zones).fill(depth_um[pad.name]!)]),
  );
  return poseFromNumbers(settledPose(settling(slide), zoneVector(slide, each)));
}

describe('even cuts on a V in a groove', () => {
  it('10 µm off both flanks of a 90° V: 14.142136 down (10 / sin 45°), nothing sideways', () => {
    const pose = even(inGroove(45, 45), { front: 10, back: 10, flat: 10 / Math.SQRT1_2 });
    expectPrinted(pose.t_um[2], '-14.142136');
    expectWithin(pose.t_um[1], 0, 5e-10);
    for (const turn of pose.turn_urad) expectWithin(turn, 0, 5e-8);
  });
  it('10 µm off one flank: 7.071068 down and as much toward the scraped flank', () => {
    const front = even(inGroove(45, 45), { front: 10, back: 0, flat: 10 * Math.SQRT1_2 });
    expectPrinted(front.t_um[2], '-7.071068');
    expectPrinted(front.t_um[1], '-7.071068');
    const back = even(inGroove(45, 45), { front: 0, back: 10, flat: 10 * Math.SQRT1_2 });
    expectPrinted(back.t_um[2], '-7.071068');
    expectPrinted(back.t_um[1], '7.071068');
  });
  it('flanks of 70° and 20°, 10 µm off both: 12.817128 down and 5.976725 toward the 70° flank', () => {
    const pose = even(inGroove(70, 20), { front: 10, back: 10, flat: 12.817127644 });
    expectPrinted(pose.t_um[2], '-12.817128');
    expectPrinted(pose.t_um[1], '-5.976725');
  });
});

describe('wear of a raised V and where the tool goes (trade handbook, derived there)', () => {
  it('outer 30 µm, inner 50 µm at 45°: 14.14 toward the operator, 56.57 down', () => {
    const pose = even(onRaisedV(45, 45), { outer: 30, inner: 50, flat: 80 * Math.SQRT1_2 });
    expectPrinted(-pose.t_um[1], '14.14');
    expectPrinted(pose.t_um[2], '-56.57');
  });
  it('the same off flanks of 30° and 60°: 28.30 toward the operator, 50.98 down', () => {
    // dh = −(w1 sin θ2 + w2 sin θ1) / sin 90°
    const drop = 30 * Math.sin(rad(60)) + 50 * Math.sin(rad(30));
    const pose = even(onRaisedV(30, 60), { outer: 30, inner: 50, flat: drop });
    expectPrinted(-pose.t_um[1], '28.30');
    expectPrinted(pose.t_um[2], '-50.98');
  });
  it('with 20 µm off the flat 200 mm behind, the saddle rolls 0.18284 mm/m and a tool 150 mm up moves 41.57', () => {
    const pose = even(onRaisedV(45, 45), { outer: 30, inner: 50, flat: 20 });
    // Front lower than back: about x, plus.
    expectPrinted(pose.turn_urad[0] / 1000, '0.18284');
    const tool = displacement(pose, [0, 0, 150]);
    expectPrinted(-tool[1], '41.57');
    expectPrinted((-2 * tool[1]) / 1000, '0.08314');
  });
});

describe('the yaw recipe of a saddle (trade handbook, derived there): 0.02 mm in 300 more concave, V 350 mm long, 45°', () => {
  // Eight zones over 400 mm: 350 mm from the first zone's middle to the last one's.
  const slide = onRaisedV(45, 45, 240);
  const yaw_urad = slope(20, 300);
  const turn = (name: string, axis: AxisName) => ({ name, kind: 'turn', axis }) as const;
  const input = {
    slide,
    features: [turn('facing', 'z'), turn('across', 'x'), turn('along', 'y')],
    targets: [
      { feature: 'facing', low: yaw_urad - 9, high: yaw_urad + 9, aim: yaw_urad },
      { feature: 'across', low: -9, high: 9, aim: 0 },
      { feature: 'along', low: -9, high: 9, aim: 0 },
    ],
  };
  it('the plan finds it: 16.5 µm off the inner flank at the headstock end and off the outer at the other, the flat 11.7 µm all over', async () => {
    const plan = await planDepth(
      planProblem(input, { facing: 0, across: 0, along: 0 }, { liner: { um: 8, sd_um: 2 } }),
      solveWithHighs,
    );
    if (!plan.ok) throw new Error(plan.text);
    const [outer, inner, level] = [0, 8, 16].map((from) => plan.depth_um.slice(from, from + 8));
    // √2 · w / L = yaw
    expectPrinted(inner![0]!, '16.5');
    expectPrinted(outer![7]!, '16.5');
    expectWithin(inner![7]!, 0, 5e-7);
    expectWithin(outer![0]!, 0, 5e-7);
    for (const depth of level!) expectPrinted(depth, '11.7');
    expectNear(Math.SQRT2 * slope(inner![0]!, 350), yaw_urad, 1e-9);
    expectPrinted(-plan.move[2], '11.7');
  });
});

describe('levers', () => {
  it('a fall of 0.02 mm in 300 lifts 6.67 µm at 100 mm and 33.3 at 500', () => {
    expectPrinted(rise(slope(20, 300), 100), '6.67');
    expectPrinted(rise(slope(20, 300), 500), '33.3');
  });
});
