import { describe, it } from 'vitest';
import { rise } from '../src/core/body/displacement.ts';
import type { Vector } from '../src/core/body/vector.ts';
import { faced } from '../src/core/parts/faced.ts';
import { trueSpindle } from '../src/core/parts/spindle.ts';
import type { Travel } from '../src/core/parts/travel.ts';
import { turned } from '../src/core/parts/turned.ts';
import { expectNear, expectPrinted, expectWithin } from './near.ts';

/*
 * Sources: geometry of a front tool and the trade's rules for an engine lathe (the numbers worked by hand from the rules:
 * derived); limits and directions in the style of ISO 1708:1989, from memory; two examples of arms times angles, seen: a
 * motion-stage maker's glossary (10 mm and 1 µrad make about 0.01 µm) and a laser instrument's manual of the 1980s, whose
 * appendix takes 5e-6 for a second of arc (50 mm and 5 minutes make 75 µm); one budget of four parts, seen on an optics
 * maker's page (1.250, 1.250, 3.808 and 4.620 µm are 6.242 by squares and 10.93 added up).
 */
type Six = [number, number, number, number, number, number];
const still: Six = [0, 0, 0, 0, 0, 0];
const bed = (...ends: readonly [at: number, pose: Six][]): Travel => ({
  name: 'bed',
  along: 'x',
  stations_mm: ends.map(([at]) => at),
  poses: ends.map(([, pose]) => pose),
});
const turn = (travel: Travel, more: Partial<Parameters<typeof turned>[0]> = {}) =>
  turned({
    travel,
    spindle: trueSpindle,
    tool_mm: [0, -20, 150],
    side: 'front',
    tool_high_mm: 0,
    radius_mm: 20,
    from_mm: travel.stations_mm[0]!,
    to_mm: travel.stations_mm.at(-1)!,
    ...more,
  });
const face = (pose: Six, more: Partial<Parameters<typeof faced>[0]> = {}) =>
  faced({
    saddle: bed([0, pose], [1000, pose]),
    at_mm: 300,
    tool_mm: [0, -150, 150],
    square_urad: { value: 0 },
    spindle: trueSpindle,
    side: 'front',
    rim_mm: 150,
    inner_mm: 0,
    ...more,
  });

describe('a tool that rises and falls (second order; derived, three printed digits)', () => {
  const rises = (high_mm: number, by_mm: number, radius_mm: number) =>
    turn(bed([0, still], [300, [0, 0, 1000 * by_mm, 0, 0, 0]]), {
      tool_high_mm: high_mm,
      radius_mm,
    }).diameter_um.at(-1)! / 2;
  it('by 0.05 mm on a radius of 10 mm adds 0.125 µm to the radius; by 0.1 mm on 3 mm, 1.7 µm', () => {
    expectPrinted(rises(0, 0.05, 10), '0.125');
    expectPrinted(rises(0, 0.1, 3), '1.7');
  });
  it('but from half a millimetre off centre it adds 2.6 µm', () => {
    expectPrinted(rises(0.5, 0.05, 10), '2.6');
  });
});

describe('a headstock out of line (derived: twice the slope times the length)', () => {
  it('0.015 in 300 mm toward the tool makes work 0.03 mm larger at the headstock, the side the rule allows', () => {
    // Directions of G7 and P1 in the style of ISO 1708, from memory: free end toward the tool, larger at the headstock.
    const out = turn(bed([0, still], [300, still]), {
      spindle: { across_urad: { value: -50 }, up_urad: { value: 0 } },
    });
    expectNear(out.taper_um.value, -30, 1e-9);
    expectNear(out.cylindricity_um.value, 15, 1e-9);
    expectWithin(out.bow_um.value, 0, 1e-9);
  });
  it('0.02 in 300 mm of rise does nothing that can be measured', () => {
    const out = turn(bed([0, still], [300, still]), {
      spindle: { across_urad: { value: 0 }, up_urad: { value: 66.7 } },
    });
    // ε = 0.02 mm on R 20: ΔD = ε²/R = 0.02 µm.
    expectPrinted(out.taper_um.value, '0.02');
  });
  it('two collars: D at the chuck less D at the free end is twice tilt × length and twice height × change of cross level', () => {
    // Cross level plus: front high, so it is −ω_x. 200 mm, 30 µrad toward the tool, 40 µrad of twist, tool 150 mm up.
    const out = turn(bed([0, still], [200, [0, 0, 0, -40, 0, 0]]), {
      spindle: { across_urad: { value: -30 }, up_urad: { value: 0 } },
    });
    const wanted = 2 * rise(30, 200) + 2 * rise(40, 150);
    expectNear(-out.diameter_um.at(-1)!, wanted, 1e-3);
  });
});

describe('a worn V and flat (worked in the trade’s own frame: s, q, h)', () => {
  it('flanks 0.03 and 0.05, flat 0.02 mm low: the tool goes 0.0416 mm to the operator, work 0.083 mm larger', () => {
    const q = (0.05 - 0.03) / Math.SQRT2;
    const h = -(0.03 + 0.05) / Math.SQRT2;
    const level = (h + 0.02) / 200;
    const worn: Six = [0, -1000 * q, 1000 * h, -1e6 * level, 0, 0];
    // No overhang of the tool across: its own height, which counts in the second order, is that of the V.
    const out = turn(bed([0, still], [300, worn]), { tool_mm: [0, 0, 150], radius_mm: 1e6 });
    expectPrinted(out.diameter_um.at(-1)! / 1000, '0.083');
  });
});

describe('facing (derived: f = ε D/2, and twice that past the centre)', () => {
  it('0.02 in 300 mm on a face of 300 mm is 10 µm hollow, 20 µm on an indicator past the centre', () => {
    const out = face(still, { square_urad: { value: 200 / 3 } });
    expectNear(out.concave_um.value, 10, 1e-9);
    expectNear(out.square_urad.value, 66.6667, 1e-3);
    expectNear(2 * out.concave_um.value, 20, 1e-9);
    expectWithin(out.form_um, 0, 5e-10);
  });
  it('0.045 in 100 mm, as one owner found, is concave by 0.045 on a radius of 100', () => {
    expectNear(face(still, { square_urad: { value: 450 }, rim_mm: 100 }).concave_um.value, 45, 1e-9);
  });
  it('the contract’s rule: ω_z plus is concave; the trade’s: yaw of the tail end toward the operator is convex', () => {
    const gamma = 30;
    expectNear(face([0, 0, 0, 0, 0, -gamma]).concave_um.value, -rise(gamma, 150), 1e-9);
  });
  it('a spindle toward the tool makes faces as much more concave', () => {
    const toward = { across_urad: { value: -50 }, up_urad: { value: 0 } };
    expectNear(face(still, { spindle: toward }).concave_um.value, 7.5, 1e-9);
  });
});

describe('angles times arms (seen)', () => {
  const across = (pose: Six, tool_mm: Vector) =>
    turn(bed([0, still], [300, pose]), { tool_mm, radius_mm: 1e6 }).diameter_um.at(-1)! / 2;
  it('a tilt of 1 µrad at 10 mm is 0.01 µm', () => {
    expectPrinted(across([0, 0, 0, 1, 0, 0], [0, 0, 10]), '0.01');
  });
  it('5 minutes of arc at 50 mm are 75 µm, at 10 mm 15 µm, at 5e-6 to the second as printed', () => {
    expectPrinted(across([0, 0, 0, 1500, 0, 0], [0, 0, 50]), '75');
    expectPrinted(across([0, 0, 0, 1500, 0, 0], [0, 0, 10]), '15');
  });
  it('doubts of 1.250, 1.250, 3.808 and 4.620 µm are 6.242 together; errors of that size add up to 10.93', () => {
    // The first two as a turn of 25 µrad at 50 mm, the third along the tool's way, the fourth as the axis' slope over 300 mm.
    const sds: Six = [0, 3.8077, 0, 25, 0, 25];
    const out = turn(
      { ...bed([0, still], [300, [0, -3.8077, 0, 25, 0, -25]]), doubt: { sds: [still, sds] } },
      {
        tool_mm: [50, 0, 50],
        radius_mm: 1e6,
        spindle: { across_urad: { value: 15.4, sd: 15.4 }, up_urad: { value: 0 } },
      },
    );
    expectPrinted(out.diameter_sd_um.at(-1)! / 2, '6.242');
    expectPrinted(out.diameter_um.at(-1)! / 2, '10.93');
  });
});
