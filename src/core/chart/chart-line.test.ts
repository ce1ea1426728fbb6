import { describe, expect, it } from 'vitest';
import type { AcceptanceTest } from './acceptance-test.ts';
import { type ChartAsked, chartLines, tally } from './chart.ts';
import { kitProof, nextMeasurements } from './next-measurement.ts';
import { settle } from './settle.ts';

const source = { came: "shop's own", words: 'for this test' } as const;
const axis: AcceptanceTest = {
  id: 'axis',
  group: 'Spindle',
  name: 'Axis against the travel',
  kind: 'slope',
  plus: 'the free end rises',
  how: 'a bar in the spindle',
  limits: { ours: { sense: 'plus', um: 21, over_mm: 300, source } },
  minutes: 20,
};
const way: AcceptanceTest = {
  id: 'way',
  group: 'Bed',
  name: 'Front way, form of the way',
  curve: 'form of the way',
  kind: 'size',
  plus: 'the middle is high',
  how: 'a level stepped along it',
  length: 'centres',
  by: 'centres',
  limits: {
    ours: {
      sense: 'plus',
      steps: [{ up_to_mm: 1100, um: 17 }],
      source,
      local: [
        { up_to_mm: 1000, um: 7.5, any_mm: 250 },
        { um: 15, any_mm: 500 },
      ],
    },
  },
  minutes: 40,
};
const asked = (results: ChartAsked['results'], centres = 900): ChartAsked => ({
  groups: ['Bed', 'Spindle'],
  tests: [axis, way],
  class: 'ours',
  scaling: { floor_um: 5, round_um: 2 },
  dimensions: { centres },
  results,
});

describe('lines of a chart', () => {
  it('stand group by group, each with the local limit of a machine of its size behind it', () => {
    expect(chartLines(asked({})).map((line) => [line.id, line.any_mm])).toEqual([
      ['way', undefined],
      ['way:local', 250],
      ['axis', undefined],
    ]);
    expect(chartLines(asked({}, 1050))[1]).toMatchObject({ any_mm: 500, band: { high: 15 } });
  });

  it('a slope measured over another length is held to the limit of that length, and as found is spoken over it too', () => {
    const [line] = chartLines(
      asked({
        axis: {
          first: { value_um: 33, doubt_um: 3, over_mm: 300 },
          final: { value_um: 8, doubt_um: 2, over_mm: 200 },
        },
      }),
    ).filter((one) => one.id === 'axis');
    // 21 · 200 / 300 = 14; 33 · 200 / 300 = 22, 3 · 200 / 300 = 2.
    expect(line).toMatchObject({ over_mm: 200, band: { low: 0, high: 14 }, verdict: 'within' });
    expect(line!.first).toMatchObject({ value_um: 22, doubt_um: 2 });
  });

  it.each([
    [{ value_um: 17, doubt_um: 4 }, 'within'],
    [{ value_um: 17.1, doubt_um: 4 }, 'not proven'],
    [{ value_um: 23, doubt_um: 4 }, 'not proven'],
    [{ value_um: 25.1, doubt_um: 4 }, 'outside'],
    [{ value_um: -4.1, doubt_um: 4 }, 'outside'],
    [{ value_um: 11 }, 'not proven'],
  ] as const)(
    'the axis at %o is %s: its doubt counts against it, and without one nothing is proven',
    (final, verdict) =>
      expect(chartLines(asked({ axis: { final } })).find((one) => one.id === 'axis')!.verdict).toBe(verdict),
  );

  it('what was never measured is said to be so, and counted apart', () => {
    const lines = chartLines(asked({ axis: { final: { value_um: 9, doubt_um: 2 } } }));
    expect(tally(lines)).toEqual({ within: 1, outside: 0, 'not proven': 0, 'not measured': 2 });
  });
});

describe('what settles a line', () => {
  const band = { low: 0, high: 21 };
  it('more readings, when chance is most of the doubt', () =>
    // d = 3; of 5² chance is 25 − 4 = 21, room 9 − 4 = 5; two readings become 2 · 21 / 5 = 8.4, so 9: seven more.
    expect(settle({ value_um: 18, doubt_um: 5, shared_um: 2, readings: 2 }, band)).toEqual({
      by: 'more readings',
      more: 7,
    }));
  it('a better reference, when repeating cannot', () =>
    expect(settle({ value_um: 18, doubt_um: 5, shared_um: 3.5, readings: 2 }, band)).toEqual({
      by: 'less doubt',
      to_um: 3,
    }));
  it('other work, when it lies on the limit', () =>
    expect(settle({ value_um: 20.95, doubt_um: 5 }, band)).toMatchObject({ by: 'other work' }));
  it('the number of readings said is enough, and one fewer is not', () => {
    for (const [value, doubt, shared, readings] of [
      [17.2, 4.4, 1.3, 3],
      [2.9, 6.1, 0.7, 5],
      [23.3, 2.8, 1.1, 2],
    ] as const) {
      const its = settle({ value_um: value, doubt_um: doubt, shared_um: shared, readings }, band);
      if (its.by !== 'more readings') throw new Error(its.by);
      const doubtWith = (more: number) =>
        Math.sqrt(shared ** 2 + ((doubt ** 2 - shared ** 2) * readings) / (readings + more));
      const reach = Math.min(Math.abs(value), Math.abs(21 - value));
      expect(doubtWith(its.more)).toBeLessThanOrEqual(reach);
      expect(doubtWith(its.more - 1)).toBeGreaterThan(reach);
    }
  });
});

describe('the cheapest next measurement', () => {
  const lines = chartLines(asked({ axis: { final: { value_um: 18, doubt_um: 3.5 } } }));
  it('is the one that takes least time: one more bar reading before a first walk along the way', () =>
    expect(nextMeasurements(lines).map((one) => [one.line, one.minutes])).toEqual([
      ['axis', 20],
      ['way', 40],
      ['way:local', 40],
    ]));
  it('is bettered by the kit where that is quicker', () => {
    const axisLine = lines.find((one) => one.id === 'axis')!;
    const kit = {
      instruments: [{ kind: 'indicator', name: 'lever', graduation_um: 2, repeatability_um: 1.1 }],
      references: [
        { kind: 'test bar', name: 'bar', length_mm: 320, known: { by: 'limit', limit_um: 3 }, depth_mm: 40 },
      ],
    } as const;
    const proof = kitProof(
      axisLine,
      {
        method: 'test bar',
        name: 'bar, once',
        instrument: 'lever',
        reference: 'bar',
        length_mm: 300,
        readings: 1,
        turned_half: false,
        plane: 'horizontal',
        sag_taken_out: true,
      },
      kit,
    )!;
    // Room 10.5 µm, from value to limit 3: the ratio that settles it is 3.5.
    expect(proof.proof.cheapest!.ratio).toBeGreaterThanOrEqual(3.5);
    const [first] = nextMeasurements(lines, [proof]);
    expect(first).toMatchObject({ line: 'axis', how: proof.proof.cheapest!.how });
    expect(first!.minutes).toBeLessThan(20);
  });
});
