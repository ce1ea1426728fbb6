import { describe, expect, it } from 'vitest';
import { axisOf } from '../src/core/axis/bar-axis.ts';
import { type Bar, centredSag, heldSag } from '../src/core/axis/bar-sag.ts';
import { centresOf, swungSag } from '../src/core/axis/centres.ts';
import { expectPrinted, expectSame, expectWithin } from './near.ts';

/*
 * Sag of a steel bar held at one end, 300 mm out: 40 mm solid 3.77 µm, bored 28 mm 2.53 µm, 30 mm solid 6.70 µm; printed without its constants;
 * 7850 kg/m³ and 206.8 GPa (30 million pounds on the square inch) in 2ρgL⁴/E(D² + d²) give all three. Deflections of uniform beams: tables of
 * every handbook (from memory): held at one end qL⁴/8EI, and 17/384 qL⁴/EI half way out; on two ends 5qL⁴/384EI in the
 * middle, 57/6144 qL⁴/EI at a quarter. Reversal as in checks/kit-reversal.check.ts.
 */
const bar = (diameter_mm: number, bore_mm = 0): Bar => ({
  diameter_mm,
  bore_mm,
  density_kg_m3: 7850,
  modulus_GPa: 206.8,
});

describe('sag of a test bar', () => {
  it('at its end, as printed', () => {
    expectPrinted(heldSag(bar(40), 300, 300), '3.77');
    expectPrinted(heldSag(bar(40, 28), 300, 300), '2.53');
    expectPrinted(heldSag(bar(30), 300, 300), '6.70');
  });
  it('half way out, 17/48 of that at its end', () => {
    expectWithin(heldSag(bar(40), 300, 150) / heldSag(bar(40), 300, 300), 17 / 48, 5e-13);
  });
  it('between centres, the middle sags 5/48 of what the same bar held at one end does, a quarter 57/80 of the middle', () => {
    expectWithin(centredSag(bar(40), 300, 150) / heldSag(bar(40), 300, 300), 5 / 48, 5e-13);
    expectWithin(centredSag(bar(40), 300, 75) / centredSag(bar(40), 300, 150), 57 / 80, 5e-13);
    expectWithin(centredSag(bar(40), 300, 300), 0, 5e-13);
  });
});

const held = { bar: bar(40), out_mm: 300, near_mm: 0, far_mm: 300, reading_sd_um: 2 };

describe('a bar turned half round (derived)', () => {
  it('worked by hand: top +9 and −21 far out, +2 and −2 at the nose: the mean falls 6, the sag is 3.77, so the axis falls 2.23 µm', () => {
    const found = axisOf(held, {
      side: 'top',
      near: { first_um: 2, turned_um: -2 },
      far: { first_um: 9, turned_um: -21 },
    });
    expectPrinted(found.slope_urad * 0.3, '-2.23');
    expect(found.bar_um).toEqual({ near: 2, far: 15 });
    // Four readings of sd 2 in two means: sd 2; sag known to a twentieth.
    expectPrinted(found.sd_urad * 0.3, Math.hypot(2, 0.05 * 3.77).toFixed(2));
  });
  it('read from below or behind, the same bar gives the same axis', () => {
    const near = { first_um: 3, turned_um: -5 };
    const far = { first_um: 17, turned_um: 7 };
    const other = (one: { first_um: number; turned_um: number }) => ({
      first_um: -one.first_um,
      turned_um: -one.turned_um,
    });
    const top = axisOf(held, { side: 'top', near, far });
    const below = axisOf(held, { side: 'bottom', near: other(near), far: other(far) });
    expectWithin(below.slope_urad, top.slope_urad, 5e-13);
    const front = axisOf(held, { side: 'front', near, far });
    const back = axisOf(held, { side: 'back', near: other(near), far: other(far) });
    expectWithin(back.slope_urad, front.slope_urad, 5e-13);
    expectSame(front.sag_um, 0);
    // Sideways nothing sags: (12 + 1)/300 mm.
    expectPrinted(front.slope_urad, ((13 / 300) * 1000).toFixed(3));
  });
});

describe('a tailstock (derived)', () => {
  it('bar between centres, read equally far from both: sag drops out, and the fall is carried on to the centres', () => {
    // 6 µm over 400 of 500 mm between the places: 7.5 µm at the centres.
    const found = centresOf({
      kind: 'bar between centres',
      bar: bar(40),
      between_mm: 500,
      head_at_mm: 50,
      tail_at_mm: 450,
      head: { first_um: 4, turned_um: -4 },
      tail: { first_um: 9, turned_um: 3 },
      plane: 'up',
      reading_sd_um: 2,
    });
    expectPrinted(found.um, '7.5');
    expectPrinted(found.sd_um, '2.5');
  });
  it('an indicator swung round the barrel: half of top less underside, less the bracket’s own sag', () => {
    // Read on something true the same bracket shows 24 µm top less underside; here 60: the barrel stands 18 high.
    const swung = { kind: 'swung indicator', plane: 'up', reading_sd_um: 2 } as const;
    const found = centresOf({
      ...swung,
      first_um: 50,
      opposite_um: -10,
      bracket: { um: 24, sd_um: 2 * Math.SQRT2 },
    });
    expectSame([found.um, found.bracket_um], [18, 12]);
    expectPrinted(found.sd_um, '2.00');
  });
  it('a bracket’s sag worked out is twice what arm and mass droop (beam tables): 250 mm of 12 mm steel with 0.1 kg', () => {
    const droop =
      (0.1 * 9.80665 * 0.25 ** 3) / (3 * 210e9 * ((Math.PI * 0.012 ** 4) / 64)) +
      (2 * 7850 * 9.80665 * 0.25 ** 4) / (210e9 * 0.012 ** 2);
    const found = swungSag({
      arm_mm: 250,
      diameter_mm: 12,
      mass_kg: 0.1,
      density_kg_m3: 7850,
      modulus_GPa: 210,
    });
    expectWithin(found.um, 2e6 * droop, 5e-10);
  });
  it('two bars exchanged: what they differ by drops out', () => {
    const found = centresOf({
      kind: 'two bars',
      first_um: 21,
      exchanged_um: 9,
      plane: 'up',
      reading_sd_um: 2,
    });
    expectSame([found.um, found.bars_um], [15, 6]);
  });
});
