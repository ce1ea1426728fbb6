import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { equilibrium } from '../rest/equilibrium.ts';
import { foundation, heldForce } from '../rest/foundation.ts';
import { wrenchOf } from '../rest/load.ts';
import { settler } from '../rest/settler.ts';
import { heightAt } from './bed.ts';
import { type SiteInput, type SitePlace, sitePlaces } from './site.ts';

const flank = (name: string, y: number, side: 1 | -1) => ({
  name,
  centre_mm: [0, y, 0] as const,
  normal: [0, (side * Math.SQRT2) / 2, Math.SQRT2 / 2] as const,
  length_mm: 400,
  width_mm: 30,
  zones: 6,
  material: 'iron',
});
const slide = {
  name: 'saddle',
  free: 'x' as const,
  pads: [
    flank('front flank', -11, -1),
    flank('rear flank', 11, 1),
    { ...flank('flat', 240, 1), normal: [0, 0, 1] as const, width_mm: 50 },
  ],
};
const stations_mm = Array.from({ length: 21 }, (_, k) => 50 * k);
const bed = (of: (pad: string, at: number) => number) => ({
  stations_mm,
  ways: slide.pads.map((pad) => ({ pad: pad.name, height_um: stations_mm.map((at) => of(pad.name, at)) })),
});
const ask = (more: Partial<SiteInput>): SiteInput => ({
  slide,
  bed: bed(() => 0),
  load: { force_N: 1200, at_mm: [0, 110, 100], direction: [0, 0, -1] },
  stiffness_N_per_mm3: 50,
  film_um: 3,
  candidates_mm: [250, 500, 750],
  positions_mm: [250, 400, 500, 600, 750],
  duty: [1, 1, 1, 1, 1],
  tool_mm: [0, -60, 180],
  ...more,
});
const placed = (input: SiteInput) => sitePlaces(input) as SitePlace[];

describe('where to print on a worn bed', () => {
  it('costs nothing anywhere on a straight bed, tilted or not', () => {
    const tilted = bed((pad, at) => (pad === 'flat' ? 0.02 : 0.0141421356) * at);
    for (const place of [...placed(ask({})), ...placed(ask({ bed: tilted }))]) {
      expect(place.yaw_rms_urad).toBeLessThan(1e-6);
      expect(place.tool_across_rms_um).toBeLessThan(1e-6);
      expect(place.bearing_fraction).toBeCloseTo(1, 12);
    }
  });

  it('costs nothing at the place of printing itself, worn or not', () => {
    const worn = bed((pad, at) => (pad === 'flat' ? -8 : -14) * Math.exp(-(((at - 300) / 150) ** 2)));
    for (const place of placed(ask({ bed: worn }))) {
      const home = [250, 400, 500, 600, 750].indexOf(place.at_mm);
      expect(place.yaw_urad[home]!).toBeCloseTo(0, 9);
      expect(place.bearing[home]!).toBe(1);
    }
  });

  it('is the same both ways round on a bed that is worn alike from both ends', () => {
    const even = bed((_, at) => -20 * Math.cos((Math.PI * (at - 500)) / 1000));
    const [left, middle, right] = placed(ask({ bed: even }));
    expect(left!.yaw_rms_urad).toBeCloseTo(right!.yaw_rms_urad, 6);
    expect(middle!.yaw_urad[0]!).toBeCloseTo(-middle!.yaw_urad[4]!, 6);
    expect(middle!.yaw_urad[2]!).toBeCloseTo(0, 9);
  });

  it('a rear flank that falls in a wedge turns the saddle by hand arithmetic', () => {
    // Both flanks at 45°: flanks that rise and fall by ±h move it across by √2 h; a rise of s µm a mm is a yaw of s√2 · 1000 µrad.
    const s = 0.004;
    const wedge = bed((pad, at) =>
      at <= 500 || pad === 'flat' ? 0 : (pad === 'rear flank' ? 1 : -1) * s * (at - 500),
    );
    const far = placed(ask({ bed: wedge, candidates_mm: [250], positions_mm: [750], duty: [1] }))[0]!;
    expect(Math.abs(far.yaw_urad[0]!)).toBeCloseTo(s * Math.SQRT2 * 1000, 3);
  });

  it('says where there is no rest', () => {
    const up = { force_N: 1200, at_mm: [0, 110, 100] as const, direction: [0, 0, 1] as const };
    expect(sitePlaces(ask({ load: up }))).toEqual({ ok: false, printed_mm: 250, at_mm: 250 });
  });

  it('refuses places beyond the survey', () => {
    expect(() => sitePlaces(ask({ positions_mm: [990], duty: [1] }))).toThrow('beyond the survey');
    expect(heightAt([0, 10, 30], [0, 5, 25], 20)).toBe(15);
  });
});

describe('many rests, each from the one before', () => {
  it('are those that are found one at a time', () => {
    const ground = foundation(slide, 50);
    const force = heldForce(ground, wrenchOf(ask({}).load));
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.double({ min: 0, max: 40, noNaN: true }), { minLength: 18, maxLength: 18 }), {
          minLength: 2,
          maxLength: 6,
        }),
        (forms) => {
          const rest = settler(ground, force);
          for (const form of forms) {
            const gap = Float64Array.from(form);
            const quick = rest(gap);
            const careful = equilibrium(ground, gap, force);
            expect(quick !== undefined).toBe(careful.converged);
            quick?.forEach((part, k) => {
              expect(Math.abs(part - careful.coordinates[k]!)).toBeLessThan(1e-6 * (1 + Math.abs(part)));
            });
          }
        },
      ),
    );
  });
});
