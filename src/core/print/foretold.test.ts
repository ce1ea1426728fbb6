import { describe, expect, it } from 'vitest';
import type { Slide } from '../body/slide.ts';
import { byPad } from '../body/slide.ts';
import { seededRandom } from '../math/random.ts';
import { foretellPrint, foretoldAgreement } from './foretold.ts';

const slide: Slide = {
  name: 'table',
  free: 'x',
  pads: [
    {
      name: 'near',
      centre_mm: [0, -90, 0],
      normal: [0, 0, 1],
      length_mm: 300,
      width_mm: 40,
      zones: 5,
      material: 'iron',
    },
    {
      name: 'far',
      centre_mm: [0, 110, 0],
      normal: [0, 0, 1],
      length_mm: 300,
      width_mm: 60,
      zones: 5,
      material: 'iron',
    },
  ],
};
const film = { roughness_um: 2, film_um: 3 };

describe('the print to expect of a form', () => {
  it('where the form is level it is Φ((film − gap)/roughness), by printed tables', () => {
    const gap_um = [1, 1, 1, 1, 1, 7, 7, 7, 7, 7];
    const print = foretellPrint({ slide, gap_um, ...film });
    for (const zone of print.slice(0, 5)) expect(zone.share).toBeCloseTo(0.8413, 4);
    for (const zone of print.slice(5)) expect(zone.share).toBeCloseTo(0.0228, 4);
  });

  it('a zone that leans a long way prints by the part of it that is near: half of one that passes through the film', () => {
    // 40 µm a zone: the middle one goes from −17 to 23 about the film.
    const print = foretellPrint({
      slide,
      gap_um: [-77, -37, 3, 43, 83, 0, 0, 0, 0, 0],
      roughness_um: 0.5,
      film_um: 3,
    });
    expect(print[2]!.share).toBeCloseTo(0.5, 9);
    expect([print[0]!.share, print[4]!.share].map((share) => share.toFixed(6))).toEqual([
      '1.000000',
      '0.000000',
    ]);
  });

  it('is the same mirrored when the form is', () => {
    const gap_um = [4, 1, 0, 3, 8, 2, 2.5, 6, 1, 0.5];
    const mirrored = [...gap_um.slice(0, 5).reverse(), ...gap_um.slice(5).reverse()];
    const print = foretellPrint({ slide, gap_um, ...film });
    const other = foretellPrint({ slide, gap_um: mirrored, ...film });
    for (let k = 0; k < 5; k++) expect(other[4 - k]!.share).toBeCloseTo(print[k]!.share, 12);
  });

  it('an unsure gap widens what it may be: Φ with both sds, and a doubt that drawing agrees with (seed 2)', () => {
    const [zone] = foretellPrint({
      slide,
      gap_um: Array(10).fill(4),
      gap_sd_um: Array(10).fill(1.5),
      ...film,
    });
    // (3 − 4)/√(2² + 1.5²) = −0.4: 0.3446 in tables.
    expect(zone!.share).toBeCloseTo(0.3446, 4);
    const random = seededRandom(2);
    const shares = Array.from(
      { length: 20000 },
      () => foretellPrint({ slide, gap_um: Array(10).fill(4 + random.normal(0, 1.5)), ...film })[0]!.share,
    );
    const mean = shares.reduce((a, b) => a + b, 0) / shares.length;
    const square = shares.reduce((sum, share) => sum + (share - mean) ** 2, 0) / shares.length;
    expect(zone!.sd).toBeCloseTo(Math.sqrt(square + (mean * (1 - mean)) / 12), 2);
  });
});

describe('agreement of a seen print with the one foretold', () => {
  const gap_um = [1, 2, 3, 4, 5, 2, 3, 2, 4, 1];
  const told = foretellPrint({ slide, gap_um, ...film });
  const shares = byPad(
    slide,
    told.map((zone) => zone.share),
  );
  it('the same print agrees wholly', () => {
    const same = foretoldAgreement(slide, told, shares, 0.03)!;
    expect(same).toMatchObject({ score: 1, within_two_sd: 1, agrees: true, apart: [], zones: 10 });
    expect(same.chance).toBeCloseTo(1, 6);
  });
  it('a zone that does not take blue is named, with how far out it is', () => {
    const missed = { ...shares, near: shares.near!.map((share, k) => (k === 0 ? 0.1 : share)) };
    const found = foretoldAgreement(slide, told, missed, 0.03)!;
    expect(found.agrees).toBe(false);
    expect(found.apart).toHaveLength(1);
    expect(found.apart[0]).toMatchObject({ pad: 'near', zone: 0, seen: 0.1 });
    expect(found.apart[0]!.sds).toBeLessThan(-3);
    // One zone of 2400 mm² in 30000 mm².
    expect(found.score).toBeCloseTo(1 - ((shares.near![0]! - 0.1) * 2400) / 30000, 9);
  });
  it('flanks taken for each other do not agree, and a pad that was not printed is left out', () => {
    const swapped = { near: shares.far!, far: shares.near! };
    expect(foretoldAgreement(slide, told, swapped, 0.03)!.score).toBeLessThan(0.9);
    expect(foretoldAgreement(slide, told, { far: shares.far! }, 0.03)!.zones).toBe(5);
    expect(foretoldAgreement(slide, told, {}, 0.03)).toBeUndefined();
  });
  it('prints drawn from the forecast are called apart in fewer than 2 of 100 (seed 7)', () => {
    const random = seededRandom(7);
    const called = Array.from({ length: 400 }, () => {
      const drawn = told.map((zone) => {
        // Twelve patches, each blue or not; read to 0.03.
        const blue = Array.from({ length: 12 }, () => random.even() < zone.share).filter(Boolean).length;
        return Math.min(1, Math.max(0, blue / 12 + random.normal(0, 0.03)));
      });
      return foretoldAgreement(slide, told, byPad(slide, drawn), 0.03)!.agrees;
    });
    expect(called.filter((agrees) => !agrees).length).toBeLessThan(20);
  });
});
