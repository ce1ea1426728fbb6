import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../math/random.ts';
import { trueSpindle } from './spindle.ts';
import { poseAt, rowVariance, type Travel } from './travel.ts';
import { type TurnedAsk, turned } from './turned.ts';

type Six = [number, number, number, number, number, number];
const stations_mm = [0, 70, 180, 260, 410, 500];
const across = (of: (at: number) => number): Travel => ({
  name: 'bed',
  along: 'x',
  stations_mm,
  poses: stations_mm.map((at): Six => [0, of(at), 0, 0, 0, 0]),
});
const ask = (travel: Travel, more: Partial<TurnedAsk> = {}): TurnedAsk => ({
  travel,
  spindle: trueSpindle,
  tool_mm: [12, -25, 140],
  side: 'front',
  tool_high_mm: 0,
  radius_mm: 25,
  from_mm: 0,
  to_mm: 500,
  ...more,
});

describe('a turned diameter', () => {
  it('a front tool that goes away from the operator cuts smaller, by twice as much; a rear tool larger', () => {
    const grows = across((at) => at / 100);
    expect(turned(ask(grows)).taper_um.value).toBeCloseTo(-10, 9);
    expect(turned(ask(grows, { side: 'rear' })).taper_um.value).toBeCloseTo(10, 9);
  });

  it('a tool that bows toward the work in the middle turns a hollow, and leaves no taper', () => {
    const fine: Travel = {
      ...across(() => 0),
      stations_mm: Array.from({ length: 101 }, (_, k) => 5 * k),
      poses: Array.from({ length: 101 }, (_, k): Six => [0, 4 * (1 - (k / 50 - 1) ** 2), 0, 0, 0, 0]),
    };
    const out = turned(ask(fine));
    expect(out.bow_um.value).toBeCloseTo(-8, 2);
    expect(out.taper_um.value).toBeCloseTo(0, 9);
    expect(out.cylindricity_um.value).toBeCloseTo(4, 9);
    expect(out.residual_um).toBeLessThan(0.01);
  });

  it('does not hang on where the stations stand', () => {
    const line = (at: number) => 0.013 * at + 2;
    const crowded: Travel = { ...across(line), stations_mm: [0, 1, 2, 3, 4, 500] };
    const poses = crowded.stations_mm.map((at): Six => [0, line(at), 0, 0, 0, 0]);
    const [a, b] = [turned(ask(across(line))), turned(ask({ ...crowded, poses }))];
    expect(a.taper_um.value).toBeCloseTo(b.taper_um.value, 9);
    expect(b.bow_um.value).toBeCloseTo(0, 9);
  });

  it('is the same work, mirrored, when bed, tool and axis are mirrored across', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -20, max: 20, noNaN: true }), { minLength: 36, maxLength: 36 }),
        (n) => {
          const poses = stations_mm.map((_, i) => n.slice(6 * i, 6 * i + 6) as unknown as Six);
          // A mirror across y turns y and the turns about x and z round.
          const mirrored = poses.map(([x, y, z, a, b, c]): Six => [x, -y, z, -a, b, -c]);
          const spindle = { across_urad: { value: 17 }, up_urad: { value: -9 } };
          const one = turned(ask({ ...across(() => 0), poses }, { spindle, tool_high_mm: 0.3 }));
          const other = turned(
            ask(
              { ...across(() => 0), poses: mirrored },
              {
                spindle: { across_urad: { value: -17 }, up_urad: { value: -9 } },
                tool_high_mm: 0.3,
                side: 'rear',
                tool_mm: [12, 25, 140],
              },
            ),
          );
          for (const [i, d] of one.diameter_um.entries()) expect(other.diameter_um[i]!).toBeCloseTo(d, 9);
        },
      ),
    );
  });

  it('has no zero of its own: a saddle that stands elsewhere all along turns the same', () => {
    const wave = (at: number) => 3 * Math.sin(at / 90);
    const [a, b] = [turned(ask(across(wave))), turned(ask(across((at) => wave(at) + 40)))];
    // 40 µm is a larger radius by a hair, nothing else.
    for (const [i, d] of a.diameter_um.entries()) expect(b.diameter_um[i]!).toBeCloseTo(d, 9);
  });

  it('refuses a tool higher than the work, and a length beyond the bed', () => {
    expect(() =>
      turned(
        ask(
          across(() => 0),
          { tool_high_mm: 26 },
        ),
      ),
    ).toThrow('over the axis');
    expect(() =>
      turned(
        ask(
          across(() => 0),
          { to_mm: 501 },
        ),
      ),
    ).toThrow('lies beyond the stations');
  });
});

describe('its doubt', () => {
  it('of two ends by hand: an sd of 1.5 µm across at each makes 2 · 1.5 · √2 of the taper', () => {
    const travel: Travel = {
      name: 'bed',
      along: 'x',
      stations_mm: [0, 300],
      poses: [
        [0, 0, 0, 0, 0, 0],
        [0, 3, 0, 0, 0, 0],
      ],
      doubt: { sds: Array.from({ length: 2 }, (): Six => [0, 1.5, 0, 0, 0, 0]) },
    };
    expect(turned(ask(travel, { to_mm: 300 })).taper_um.sd).toBeCloseTo(3 * Math.SQRT2, 6);
  });

  it('what all stations share makes no taper', () => {
    const common_covariance = Array.from({ length: 6 }, (_, i) =>
      Array.from({ length: 6 }, (_, j) => (i === j ? 25 : 3)),
    );
    const travel = { ...across((at) => at / 70), doubt: { common_covariance } };
    // What is left is of second order: the tool's height counts a little more where it has moved.
    expect(turned(ask(travel)).taper_um.sd).toBeLessThan(0.01);
  });

  it('agrees with drawing poses at random, through covariance and axis alike (seed 5)', () => {
    const random = seededRandom(5);
    const base = across((at) => 0.02 * at + 2 * Math.sin(at / 60));
    const many = 36;
    const factor = Array.from({ length: many }, () =>
      Array.from({ length: many }, () => random.normal(0, 0.3)),
    );
    const covariance = factor.map((a) => factor.map((b) => a.reduce((sum, v, k) => sum + v * b[k]!, 0)));
    const spindle = { across_urad: { value: 8, sd: 6 }, up_urad: { value: 0 } };
    const told = turned(ask({ ...base, doubt: { covariance } }, { spindle }));
    const drawn = Array.from({ length: 3000 }, () => {
      const chance = Array.from({ length: many }, () => random.normal(0, 1));
      const poses = base.poses.map((pose, i) =>
        pose.map((part, j) => part + factor[6 * i + j]!.reduce((sum, v, k) => sum + v * chance[k]!, 0)),
      ) as unknown as Travel['poses'];
      const axis = { ...spindle, across_urad: { value: 8 + random.normal(0, 6) } };
      return turned(ask({ ...base, poses }, { spindle: axis }));
    });
    const sd = (values: readonly number[]) => {
      const mean = values.reduce((a, b) => a + b, 0) / values.length;
      return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (values.length - 1));
    };
    // 3000 drawings know an sd to 1.3 %; four times that.
    expect(sd(drawn.map((one) => one.taper_um.value)) / told.taper_um.sd).toBeCloseTo(1, 1);
    expect(Math.abs(sd(drawn.map((one) => one.taper_um.value)) / told.taper_um.sd - 1)).toBeLessThan(0.06);
    expect(Math.abs(sd(drawn.map((one) => one.bow_um.value)) / told.bow_um.sd - 1)).toBeLessThan(0.06);
  });

  it('by sds, by covariance and by sources is the same doubt', () => {
    const travel = across((at) => at / 50);
    const row = Float64Array.from({ length: 36 }, (_, i) => Math.sin(i + 1));
    const sds = stations_mm.map((_, i): Six => [1, 2, 3, 4 + i, 5, 6]);
    const flat = sds.flat();
    const covariance = flat.map((a, i) => flat.map((b, j) => (i === j ? a * b : 0)));
    const sources = flat.map((a, i) => flat.map((_, j) => (i === j ? a : 0)));
    const [one, two, three] = [{ sds }, { covariance }, { sources }].map((doubt) =>
      rowVariance({ ...travel, doubt }, row),
    );
    expect(two).toBeCloseTo(one!, 9);
    expect(three).toBeCloseTo(one!, 9);
    expect(poseAt(travel, 35)[1]).toBeCloseTo(0.7, 12);
  });
});
