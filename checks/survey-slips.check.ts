import { describe, expect, it } from 'vitest';
import { lineInput } from '../src/contract/line.ts';
import { seededRandom } from '../src/core/math/random.ts';
import { followOn } from '../src/core/survey/follow-on.ts';
import { surfaceReadings } from '../src/core/survey/surface-follow-on.ts';
import { heightSuspects } from '../src/core/survey/surface-suspect.ts';
import { missingStations, suspects } from '../src/core/survey/suspect.ts';
import { line } from '../src/shop/survey/line.ts';
import { type PlateReadings, plateKinds, plateReadings } from '../tests/fixture/plate-readings.ts';
import { type WayReadings, wayKinds, wayReadings } from '../tests/fixture/way-readings.ts';

/*
 * No published figures: how often a clean survey is suspected and how often a slip is seen, counted on invented ways of 5 to 60 stations,
 * smooth, hollow and worn in steps, quiet and loud, read by instruments of fine and coarse divisions; and on plates of 16 to 300 points. A slip can be known at all where it is
 * at least ten times as far off what its neighbours lead to as the noise, half a division and the way's own roughness there together.
 */
const each = 8;
const knowable = 10;
const surveys = wayKinds.flatMap((kind, k) =>
  Array.from({ length: each }, (_, i) => ({
    way: wayReadings(kind, 7000 + each * k + i),
    seed: each * k + i,
  })),
);

/** Share of the cases that hold, %, and how many there were. */
function counted(cases: readonly boolean[]): { percent: number; many: number } {
  return { percent: (100 * cases.filter(Boolean).length) / cases.length, many: cases.length };
}

/** How far the way itself is from what its neighbours lead to, about a place, with noise and half a division. */
function blur(way: WayReadings, place: number): number {
  const follows = followOn(way.stations_mm);
  const rough = way.true_values.map((_, i) =>
    Math.abs(i - place) <= 3 ? follows.off(way.true_values, i) : 0,
  );
  return Math.hypot(way.sd, way.division / 2, Math.max(...rough));
}

describe('slips in one run', () => {
  it(`fewer than 1 % of ${surveys.length} clean surveys are suspected of anything; none of the smooth ones`, () => {
    const alarm = ({ way }: { way: WayReadings }) => suspects(way.stations_mm, way.values).length > 0;
    expect(counted(surveys.map(alarm)).percent).toBeLessThan(1);
    expect(counted(surveys.filter(({ way }) => way.form === 'smooth').map(alarm)).percent).toBe(0);
    const long = surveys.filter(({ way }) => way.many >= 45);
    expect(counted(long.map(alarm)).percent).toBeLessThan(1.5);
  });

  it('one reading ten times too large is seen and called so in at least 95 % of those that can be known', () => {
    const seen = surveys.flatMap(({ way, seed }) => {
      const at = Math.floor(seededRandom(seed).even() * way.many);
      const slipped = way.true_values.with(at, 10 * way.true_values[at]!);
      if (followOn(way.stations_mm).off(slipped, at) < knowable * blur(way, at)) return [];
      const typed = way.values.with(at, Number((10 * way.values[at]!).toFixed(1)));
      return [suspects(way.stations_mm, typed).some((one) => one.index === at && one.times === 10)];
    });
    expect(counted(seen).many).toBeGreaterThan(0.7 * surveys.length);
    expect(counted(seen).percent).toBeGreaterThanOrEqual(95);
  });

  it('signs turned from some place on are seen, at that place, in at least 95 % of those that can be known', () => {
    const seen = surveys.flatMap(({ way, seed }) => {
      if (way.many < 8) return [];
      const from = 3 + Math.floor(seededRandom(seed).even() * (way.many - 6));
      const turn = (values: readonly number[]) => values.map((value, i) => (i < from ? value : -value));
      if (followOn(way.stations_mm).broken(turn(way.true_values), from) < knowable * blur(way, from))
        return [];
      const found = suspects(way.stations_mm, turn(way.values));
      return [found.some((one) => one.code === 'signs turned from here' && one.index === from)];
    });
    expect(counted(seen).many).toBeGreaterThan(0.4 * surveys.length);
    expect(counted(seen).percent).toBeGreaterThanOrEqual(95);
  });

  it('a value in mm among µm is asked about in at least 95 % of those larger than noise and a division', () => {
    const seen = surveys.flatMap(({ way, seed }) => {
      const at = Math.floor(seededRandom(seed).even() * way.many);
      const value = way.values[at]!;
      if (Math.abs(value) < knowable * Math.hypot(way.sd, way.division / 2)) return [];
      const typed = way.values.with(at, Number((value / 1000).toFixed(5)));
      return [suspects(way.stations_mm, typed).some((one) => one.index === at)];
    });
    expect(counted(seen).percent).toBeGreaterThanOrEqual(95);
  });

  it('a station left out of an even row is always named, even or uneven rows without a gap never', () => {
    for (const { way, seed } of surveys) {
      if (way.many < 8) continue;
      const random = seededRandom(seed);
      const at = 1 + Math.floor(random.even() * (way.many - 2));
      // Stations marked by eye stand up to 2 mm off.
      const marked = way.stations_mm.map((mm) => mm + 2 * (2 * random.even() - 1));
      expect(missingStations(marked)).toEqual([]);
      expect(missingStations(marked.toSpliced(at, 1)).map((one) => one.index)).toEqual([at]);
      const uneven = way.stations_mm.map((_, i) => 100 * i + 45 * Math.sin(9 * i));
      expect(missingStations(uneven)).toEqual([]);
    }
  });
});

describe('slips between a run and the run back', () => {
  const paired = surveys.filter((_, k) => k % 2 === 0);
  const codes = (way: WayReadings, there: readonly number[], back: readonly number[], isStated: boolean) => {
    const sd = Math.hypot(way.sd, way.division / Math.sqrt(12));
    const input =
      way.kind === 'angles'
        ? {
            kind: 'angles',
            step_mm: 100,
            angles_urad: there,
            return_urad: back,
            ...(isStated ? { reading_sd_urad: sd } : {}),
          }
        : {
            kind: 'heights',
            stations_mm: way.stations_mm,
            heights_um: there,
            return_um: back,
            ...(isStated ? { reading_sd_um: sd } : {}),
          };
    return line(lineInput(input)).warnings.map((one) => one.code);
  };
  const between = [
    'does not close',
    'runs apart',
    'run back in order there',
    'run back with signs turned',
    'scatter',
  ];

  it.each([true, false])('fewer than 1 % of clean pairs are suspected; sd stated: %s', (isStated) => {
    const alarms = paired.map(({ way }) =>
      codes(way, way.values, way.again().toReversed(), isStated).some((code) => between.includes(code)),
    );
    expect(counted(alarms).percent).toBeLessThan(1);
  });

  it.each([
    [true, 8],
    [false, 12],
  ])(
    'at least 95 % of drifts that open a run of angles by eight sds are told; sd stated: %s, from %d steps on',
    (isStated, least) => {
      const told = paired.flatMap(({ way }) => {
        if (way.kind !== 'angles' || way.many < least) return [];
        const n = way.many;
        const drift = (8 * Math.hypot(way.sd, way.division / Math.sqrt(12)) * Math.sqrt(2 * n)) / n ** 2;
        const there = way.values.map((value, i) => value + drift * i);
        const back = way
          .again()
          .toReversed()
          .map((value, i) => value + drift * (n + i));
        return [codes(way, there, back, isStated).includes('does not close')];
      });
      expect(counted(told).percent).toBeGreaterThanOrEqual(95);
    },
  );

  it.each([
    [true, 5],
    [false, 12],
  ])(
    'at least 95 % of readings that are fifteen sds off on the way back are named; sd stated: %s, from %d places on',
    (isStated, least) => {
      const named = paired.flatMap(({ way, seed }) => {
        if (way.many < least) return [];
        const at = Math.floor(seededRandom(seed).even() * way.many);
        const back = way.again().toReversed();
        const off = 15 * Math.hypot(way.sd, way.division / Math.sqrt(12));
        const found = codes(way, way.values, back.with(at, back[at]! + off), isStated);
        return [found.includes('runs apart') || found.includes('stands out')];
      });
      expect(counted(named).percent).toBeGreaterThanOrEqual(95);
    },
  );

  it('at least 95 % of lists given in the order of the run there, or with signs turned, are told where the form is ten noises large', () => {
    const [order, turned]: [boolean[], boolean[]] = [[], []];
    for (const { way } of paired) {
      const sd = Math.hypot(way.sd, way.division / Math.sqrt(12));
      const rms = (values: readonly number[]) =>
        Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length);
      const mirrored = way.true_values.map((value, i) => value - way.true_values.at(-1 - i)!);
      const mean = way.true_values.reduce((sum, value) => sum + value, 0) / way.many;
      const back = way.again().toReversed();
      if (rms(mirrored) > knowable * sd)
        order.push(codes(way, way.values, back.toReversed(), true).includes('run back in order there'));
      if (rms(way.true_values.map((value) => value - mean)) > knowable * sd)
        turned.push(
          codes(
            way,
            way.values,
            back.map((value) => -value),
            true,
          ).includes('run back with signs turned'),
        );
    }
    expect(counted(order).percent).toBeGreaterThanOrEqual(95);
    expect(counted(turned).percent).toBeGreaterThanOrEqual(95);
  });
});

describe('slips among the heights of a plate', () => {
  const plates = plateKinds.flatMap((kind, k) =>
    Array.from({ length: each }, (_, i) => ({
      plate: plateReadings(kind, 9000 + each * k + i),
      at: Math.floor(seededRandom(each * k + i).even() * kind.along * kind.across),
    })),
  );
  /** Slipped readings that can be known: ten times as far off as noise, half a division and the plate's own roughness there together. */
  const slipped = (times: number, decimals: number) =>
    plates.flatMap(({ plate, at }) => {
      const { off, touched } = surfaceReadings(plate.points);
      const rough = Math.max(...touched(at).map((k) => off(plate.true_um, k)));
      const blurred = Math.hypot(plate.sd, plate.division / 2, rough);
      if (off(plate.true_um.with(at, times * plate.true_um[at]!), at) < knowable * blurred) return [];
      const point = plate.points[at]!;
      const z_um = Number((times * point.z_um).toFixed(decimals));
      return [{ found: heightSuspects(plate.points.with(at, { ...point, z_um })), at }];
    });

  it(`fewer than 1 % of ${plates.length} clean plates are suspected, smooth ones and those worn in places`, () => {
    const alarms = (some: (plate: PlateReadings) => boolean) =>
      counted(plates.flatMap(({ plate }) => (some(plate) ? [heightSuspects(plate.points).length > 0] : [])));
    expect(alarms((plate) => plate.form !== 'smooth').percent).toBeLessThan(1);
    expect(alarms((plate) => plate.form === 'smooth').percent).toBeLessThan(1);
  });

  it.each([
    ['ten times too large', 10, 1],
    ['with its sign turned', -1, 1],
    ['in mm among µm', 0.001, 5],
  ])('one height %s is seen in at least 95 % of those that can be known', (_, times, decimals) => {
    const cases = slipped(times, decimals);
    const seen = counted(cases.map(({ found, at }) => found.some((one) => one.index === at)));
    expect(seen.many).toBeGreaterThan(plates.length / 4);
    expect(seen.percent).toBeGreaterThanOrEqual(95);
    const others = counted(cases.map(({ found, at }) => found.some((one) => one.index !== at)));
    expect(others.percent).toBeLessThan(1);
  });
});
