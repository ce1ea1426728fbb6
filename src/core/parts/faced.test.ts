import { describe, expect, it } from 'vitest';
import { corner } from './corner.ts';
import { type FacedAsk, faced } from './faced.ts';
import { trueSpindle } from './spindle.ts';
import type { Travel } from './travel.ts';
import type { TurnedAsk } from './turned.ts';

type Six = [number, number, number, number, number, number];
const saddle: Travel = {
  name: 'bed',
  along: 'x',
  stations_mm: [100, 450],
  poses: [
    [0, 4, -3, 12, 5, 35],
    [0, 9, 2, -8, 11, 21],
  ],
};
const ask = (more: Partial<FacedAsk> = {}): FacedAsk => ({
  saddle,
  at_mm: 240,
  tool_mm: [-20, -130, 150],
  square_urad: { value: 14 },
  spindle: { across_urad: { value: 6 }, up_urad: { value: 40 } },
  side: 'front',
  rim_mm: 130,
  inner_mm: 0,
  ...more,
});
/** Cross ways whose form carries the tool along x, plus toward the tailstock, at distances from the axis. */
const cross = (of: (radius: number) => number): Travel => {
  const stations_mm = Array.from({ length: 27 }, (_, k) => 5 * k);
  return {
    name: 'cross ways',
    along: 'y',
    stations_mm,
    poses: stations_mm.map((r): Six => [of(r), 0, 0, 0, 0, 0]),
  };
};

describe('a face', () => {
  it('is hollow by yaw here and out of square of the cross ways, less the axis’ slope, times the radius', () => {
    // Yaw at 240, two fifths of the way from 35 to 21: 29.4.
    expect(faced(ask()).concave_um.value).toBeCloseTo(((29.4 + 14 - 6) * 130) / 1000, 9);
    expect(faced(ask()).square_urad.value).toBeCloseTo(37.4, 9);
  });
  it('turned with the tool behind the axis is as convex', () => {
    expect(faced(ask({ side: 'rear' })).concave_um.value).toBeCloseTo(-faced(ask()).concave_um.value, 9);
  });
  it('takes the form of the cross ways: a tool that goes to the tailstock half way leaves a ridge there', () => {
    const bowed = faced(ask({ cross: cross((r) => 3 * (1 - (r / 65 - 1) ** 2)) }));
    expect(bowed.form_um).toBeCloseTo(-3, 9);
    expect(bowed.concave_um.value).toBeCloseTo(faced(ask()).concave_um.value, 9);
  });
  it('is as flat as its range, when form outdoes the cone', () => {
    const flat = { saddle: { ...saddle, poses: saddle.poses.map((): Six => [0, 0, 0, 0, 0, 0]) } };
    const bowed = faced(
      ask({
        ...flat,
        square_urad: { value: 0 },
        spindle: trueSpindle,
        cross: cross((r) => 3 * (1 - (r / 65 - 1) ** 2)),
      }),
    );
    expect([bowed.concave_um.value, bowed.flatness_um.value]).toEqual([0, 3]);
  });
  it('adds doubts by squares: yaw 3, cross ways 4 and axis 12 µrad are 13 µrad', () => {
    const sds: Six[] = [
      [9, 9, 9, 9, 9, 3],
      [9, 9, 9, 9, 9, 3],
    ];
    const out = faced(
      ask({
        at_mm: 100,
        saddle: { ...saddle, doubt: { sds } },
        square_urad: { value: 0, sd: 4 },
        spindle: { across_urad: { value: 0, sd: 12 }, up_urad: { value: 0, sd: 99 } },
      }),
    );
    expect(out.square_urad.sd).toBeCloseTo(13, 9);
    expect(out.concave_um.sd).toBeCloseTo(1.69, 9);
  });
  it('refuses an inner radius that is none, and a place beyond the bed', () => {
    expect(() => faced(ask({ inner_mm: 130 }))).toThrow('inner radius 130 mm');
    expect(() => faced(ask({ at_mm: 90 }))).toThrow('bed: 90 mm lies beyond');
  });
});

describe('the corner of a shoulder with the diameter beside it', () => {
  const beside = (more: Partial<TurnedAsk> = {}): TurnedAsk => ({
    travel: saddle,
    spindle: ask().spindle,
    tool_mm: [-20, -30, 150],
    side: 'front',
    tool_high_mm: 0,
    radius_mm: 30,
    from_mm: 240,
    to_mm: 400,
    ...more,
  });
  const shoulder = { inner_mm: 30, rim_mm: 60, tool_mm: [-20, -60, 150] as const };
  it('does not hang on how the axis lies, nor on its doubt', () => {
    const leaning = { across_urad: { value: 90, sd: 30 }, up_urad: { value: 40 } };
    const [one, other] = [ask().spindle, leaning].map((spindle) =>
      corner(ask({ ...shoulder, spindle }), beside({ spindle })),
    );
    expect(other!.value).toBeCloseTo(one!.value, 2);
    expect(other!.sd).toBeCloseTo(0, 9);
  });
  it('closes by the hollow and by the growth of the radius', () => {
    const still: Travel = { ...saddle, poses: saddle.poses.map((): Six => [0, 0, 0, 0, 0, 0]) };
    const at = { saddle: still, spindle: trueSpindle };
    const wide = { travel: still, spindle: trueSpindle };
    expect(corner(ask({ ...shoulder, ...at }), beside(wide)).value).toBeCloseTo(-14, 9);
    const grows: Travel = {
      ...still,
      poses: [
        [0, 0, 0, 0, 0, 0],
        [0, -7, 0, 0, 0, 0],
      ],
    };
    // Away from the axis by 7 µm in 350 mm: 20 µrad.
    expect(
      corner(ask({ ...shoulder, ...at, saddle: grows }), beside({ ...wide, travel: grows })).value,
    ).toBeCloseTo(-34, 6);
  });
  it('counts what shoulder and diameter share once, with its sign', () => {
    // One source: the whole saddle turned by 2 µrad and its path with it. The corner does not see it.
    const turn = [0, 0, 0, 0, 0, 2];
    const source = [...turn, ...turn];
    // The path: y grows by 2 µrad · 350 mm = 0.7 µm, the tool at x = −20 shares the turn at both ends alike.
    source[7] = 0.7;
    const told: Travel = { ...saddle, doubt: { sources: [source] } };
    expect(corner(ask({ ...shoulder, saddle: told }), beside({ travel: told })).sd).toBeCloseTo(0, 2);
    const yawOnly: Travel = { ...saddle, doubt: { sources: [[...turn, ...turn]] } };
    expect(corner(ask({ ...shoulder, saddle: yawOnly }), beside({ travel: yawOnly })).sd).toBeCloseTo(2, 9);
  });
});
