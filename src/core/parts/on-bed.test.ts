import { describe, expect, it } from 'vitest';
import type { Pad } from '../body/pad.ts';
import { sitePlaces } from '../site/site.ts';
import { type OnBed, travelOnBed } from './on-bed.ts';
import type { Travel } from './travel.ts';
import { rowVariance } from './travel.ts';

const stations_mm = Array.from({ length: 41 }, (_, k) => 25 * k);
const pad = (name: string, y: number, normal: Pad['normal'], zones: number): Pad => ({
  name,
  centre_mm: [0, y, 0],
  normal,
  length_mm: 400,
  width_mm: 30,
  zones,
  material: 'iron',
});
const q = Math.SQRT1_2;
const onBed = (zones: number, of: (pad: string, at: number) => number, more: Partial<OnBed> = {}): OnBed => {
  const pads = [
    pad('front flank', -11, [0, -q, q], zones),
    pad('rear flank', 11, [0, q, q], zones),
    pad('flat', 240, [0, 0, 1], zones),
  ];
  return {
    slide: { name: 'saddle', free: 'x', pads },
    bed: {
      stations_mm,
      ways: pads.map(({ name }) => ({ pad: name, height_um: stations_mm.map((at) => of(name, at)) })),
    },
    load: { force_N: 1200, at_mm: [0, 100, 90], direction: [0, 0, -1] },
    stiffness_N_per_mm3: 5000,
    positions_mm: [250, 375, 500, 625, 750],
    printed_mm: 500,
    ...more,
  };
};
const travelled = (on: OnBed): Travel => {
  const found = travelOnBed(on);
  if ('ok' in found) throw new Error(`no rest at ${found.at_mm}`);
  return found;
};

describe('a saddle on two feet a pad, a rigid bridge', () => {
  // Zones of a 400 mm pad cut in two stand 100 mm to each side: the feet.
  const crown = (at: number) => -((at - 500) ** 2) / 4000;
  const both = (name: string, at: number) => (name === 'flat' ? 1 : q) * crown(at);

  it('stands at the mean of what its feet stand on, and leans by their difference', () => {
    const { poses, stations_mm: places } = travelled(onBed(2, both));
    const feet = (at: number) => [crown(at - 100), crown(at + 100)] as const;
    const [low0, high0] = feet(500);
    for (const [i, at] of places.entries()) {
      const [low, high] = feet(at);
      // Both Vs and flat fall alike: straight down, and a turn about y that lowers the plus end.
      expect(poses[i]![2]).toBeCloseTo((low + high - low0 - high0) / 2, 1);
      expect(poses[i]![4]).toBeCloseTo((-1000 * (high - low)) / 200, 0);
      expect(poses[i]![3]).toBeCloseTo(0, 1);
      expect(poses[i]![5]).toBeCloseTo(0, 1);
    }
  });

  it('a flat that falls away alone rolls it: height of the flat over its distance from the V', () => {
    const step = (name: string, at: number) => (name === 'flat' && at > 520 ? -24 : 0);
    const far = travelled(onBed(2, step, { positions_mm: [250, 750], printed_mm: 250 })).poses[1]!;
    expect(far[3]).toBeCloseTo(-100, 0);
    expect(far[0]).toBe(0);
  });
});

describe('poses behind site', () => {
  it('are those that site reckons with', () => {
    const worn = (name: string, at: number) =>
      (name === 'flat' ? -6 : name === 'rear flank' ? -15 : -9) * Math.exp(-(((at - 320) / 140) ** 2));
    const on = onBed(6, worn, { printed_mm: 375, stiffness_N_per_mm3: 50 });
    const { poses } = travelled(on);
    const place = sitePlaces({
      ...on,
      film_um: 3,
      candidates_mm: [375],
      duty: on.positions_mm.map(() => 1),
      tool_mm: [0, -60, 180],
    });
    if ('ok' in place) throw new Error('no rest');
    for (const [i, yaw] of place[0]!.yaw_urad.entries()) {
      expect(poses[i]![5]).toBeCloseTo(yaw, 6);
      expect(poses[i]![3]).toBeCloseTo(place[0]!.roll_urad[i]!, 6);
    }
  });

  it('the doubt of the heights passes through: two feet on a way, each ±1 µm', () => {
    const on = onBed(2, () => 0, { height_sd_um: 1, positions_mm: [250, 750], printed_mm: 250 });
    const travel = travelled(on);
    // Pitch at 750 against 250: front V, and flat, each with two feet 200 mm apart, both places: by hand for the flat alone.
    const lift = new Float64Array(12);
    lift[6 + 2] = 1;
    lift[6 + 3] = 0.24;
    // Height over the flat at y = 240: the mean of its two feet, here less there: √(4 · 1/4) = 1 µm.
    expect(Math.sqrt(rowVariance(travel, lift))).toBeCloseTo(1, 2);
  });

  it('says where a lifted slide does not rest', () => {
    const load = { force_N: 1200, at_mm: [0, 100, 90] as const, direction: [0, 0, 1] as const };
    expect(travelOnBed(onBed(2, () => 0, { load }))).toEqual({ ok: false, printed_mm: 500, at_mm: 500 });
  });
});
