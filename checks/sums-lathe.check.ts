import { describe, it } from 'vitest';
import { expectPrinted, expectWithin } from './near.ts';
import { sumOf } from './sum-of.ts';

/*
 * Trade geometry of the lathe and arithmetic of liners: derived line by line, formulae common practice. The limit of 0.02 mm
 * concave on 300 mm (ISO 1708, from memory) gives the facing its scale.
 */
describe('facing', () => {
  it('out of square by 0.02 mm in 300 mm: a 300 disc 10 µm hollow, 20 µm for an indicator drawn across it', () => {
    const got = sumOf('facing', { square_urad: (0.02 / 300) * 1e6, diameter_mm: 300 });
    expectPrinted(got.hollow!.value, '10.0000');
    expectPrinted(got.felt!.value, '20.0000');
  });
});

describe('tapers', () => {
  it('an axis 0.01 in 300 towards the tool: 20 µm larger at the chuck over 300', () =>
    expectPrinted(
      sumOf('headstock-taper', { swivel_urad: (0.01 / 300) * 1e6, between_mm: 300 }).taper!.value,
      '20.0000',
    ));
  it('ways twisted 0.02 mm/m under a tool 150 high: 6 µm, whatever the length', () =>
    expectPrinted(
      sumOf('headstock-taper', { swivel_urad: 0, between_mm: 212, twist_urad: 20, height_mm: 150 }).taper!
        .value,
      '6.0000',
    ));
  it('a tailstock 0.02 towards the tool, 500 between centres: 24 µm over 300; and back again from the two diameters', () => {
    const taper = sumOf('tailstock-taper', { out_um: 20, centres_mm: 500, turned_mm: 300 }).taper!.value;
    expectPrinted(taper, '24.0000');
    const back = sumOf('tailstock-out', {
      head_mm: 40 + taper / 1000,
      tail_mm: 40,
      centres_mm: 500,
      turned_mm: 300,
    });
    expectWithin(back.move!.value, 20, 5e-7);
  });
});

describe('liners and height', () => {
  it('sheet 1.6, bond 0.1, allowance 0.1, raise 0.5: mill 1.100 flat, 1.246 on a 45° flank', () => {
    const liner = { raise_mm: 0.5, sheet_mm: 1.6, bond_mm: 0.1, allowance_mm: 0.1 };
    expectPrinted(sumOf('liner', liner).mill!.value, '1.100');
    expectPrinted(sumOf('liner', { ...liner, lean_deg: 45 }).mill!.value, '1.246');
  });
  it('a saddle 1 mm down: backlash 0.73 at 20° and 0.52 at 14.5°', () => {
    const lost = (pressure_deg: number) => sumOf('lost-height', { bed_mm: 1, pressure_deg }).backlash!.value;
    expectPrinted(lost(20), '0.73');
    expectPrinted(lost(14.5), '0.52');
  });
  it('a stack: 1.6 to fill with 0.9 liner, 0.1 bond and a 0.5 shim leaves 0.1 wanted', () =>
    expectPrinted(
      sumOf('stack', { space_mm: 1.6, liner_mm: 0.9, bond_mm: 0.1, first_mm: 0.5 }).wanted!.value,
      '0.10000',
    ));
});
