import { describe, expect, it } from 'vitest';
import { surveyLine } from './line.ts';
import { thereAndBack } from './there-and-back.ts';

const stations_mm = [0, 150, 320, 480, 630, 790, 1000];

describe('wear below unworn stretches', () => {
  /** A tilted way, worn by these depths between its ends. */
  const worn = [0, 0, 7, 19, 11, 3, 0];
  const heights_um = stations_mm.map((at, i) => 40 - 0.03 * at - worn[i]!);
  const unworn_mm = [
    [0, 200],
    [950, 1000],
  ] as const;
  it('is the depth that was taken off, whatever the tilt, with the deepest place', () => {
    const { wear } = surveyLine({ kind: 'heights', stations_mm, heights_um, unworn_mm });
    for (const [i, um] of wear!.wear_um.entries()) expect(um).toBeCloseTo(worn[i]!, 9);
    expect(wear!.deepest).toMatchObject({ index: 3 });
    expect(wear!.through).toEqual([0, 1, 6]);
  });
  it('its doubt is a reading’s and the line’s, and larger where the line is carried on beyond its stations', () => {
    const near = surveyLine({
      kind: 'heights',
      stations_mm,
      heights_um,
      unworn_mm: [[0, 330]],
      reading_sd_um: 1,
    });
    const sds = near.wear!.sd_um!;
    // Line through 0, 150, 320: x̄ = 156.67, Σ(x − x̄)² = 51266.67; at 1000: 1 + 1/3 + 843.33²/51266.67.
    expect(sds[6]!).toBeCloseTo(Math.sqrt(1 + 1 / 3 + 843.3333333 ** 2 / 51266.6666667), 6);
    expect(sds[6]!).toBeGreaterThan(sds[3]!);
  });
});

describe('what makes a line doubtful', () => {
  it('a straightedge’s own form counts by its rms, and a reversed run takes it out', () => {
    const long = Array.from({ length: 101 }, (_, i) => 10 * i);
    const heights_um = long.map((at) => at / 90);
    const one = surveyLine({ kind: 'heights', stations_mm: long, heights_um, reference_sd_um: 2 });
    const rms = Math.sqrt(one.sd!.endpoint_um.reduce((sum, sd) => sum + sd * sd, 0) / 100);
    expect(rms).toBeCloseTo(2, 6);
    const turned = {
      kind: 'heights',
      stations_mm: long,
      heights_um,
      reversed_um: heights_um,
      reference_sd_um: 2,
    } as const;
    expect(surveyLine(turned).sd).toBeUndefined();
    const read = surveyLine({ ...turned, reading_sd_um: 1 });
    // Mean of two readings less the ends by half each: √(1/2)·√(1 + 1/4 + 1/4).
    expect(read.sd!.endpoint_um[50]!).toBeCloseTo(Math.sqrt(0.75), 9);
  });
  it('a run back halves the variance, and shows a reading’s sd where none is stated', () => {
    const angles_urad = [4, -7, 12, 3, -9, 8];
    const input = { kind: 'angles', step_mm: 120, angles_urad, reading_sd_urad: 3 } as const;
    const alone = surveyLine(input).sd!.endpoint_um[3]!;
    const both = surveyLine({ ...input, return_urad: angles_urad.toReversed() }).sd!.endpoint_um[3]!;
    expect(both).toBeCloseTo(alone / Math.SQRT2, 12);
    const return_urad = [9.5, -10, 3.5, 11, -6, 3];
    const shown = surveyLine({ kind: 'angles', step_mm: 120, angles_urad, return_urad });
    const { scatter } = thereAndBack(angles_urad, return_urad);
    expect(shown.sd!.endpoint_um[3]!).toBeCloseTo((0.12 * scatter * Math.sqrt(1.5)) / Math.SQRT2, 9);
  });
  it('readings that mean hollow are the same way upside down', () => {
    const heights_um = [3, 8, -2, 5, 11, 4, 7];
    const proud = surveyLine({ kind: 'heights', stations_mm, heights_um });
    const hollow = surveyLine({
      kind: 'heights',
      stations_mm,
      heights_um: heights_um.map((h) => -h),
      plus: 'hollow',
    });
    expect(hollow.endpoint_um).toEqual(proud.endpoint_um);
  });
});
