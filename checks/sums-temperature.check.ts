import { describe, it } from 'vitest';
import { expectPrinted } from './near.ts';
import { sumOf } from './sum-of.ts';

/*
 * Sources: d = αL²ΔT/8h from memory, numbers derived; expansions of cast iron 10.8, steel 11.5 and granite 7.9e-6/K seen (two
 * plate and gauge makers' tables; gauge steel as in JCGM 100 H.1, second hand).
 */
const bow = (expansion_um_mK: number, length_mm: number, depth_mm: number, warmer_K: number) =>
  sumOf('thermal-bow', { expansion_um_mK, length_mm, depth_mm, warmer_K }).bow!.value;

describe('warmer on top bows the middle up', () => {
  it('cast iron 10.5e-6, 2000 × 400, 1 K: 13.125 µm; the exact circle 13.1250016', () => {
    expectPrinted(bow(10.5, 2000, 400, 1), '13.125000');
    const radius_mm = 400 / 10.5e-6;
    expectPrinted((radius_mm - Math.sqrt(radius_mm ** 2 - 1000 ** 2)) * 1000, '13.1250');
  });
  it('10.8e-6, 1000 × 200: 6.75 µm', () => expectPrinted(bow(10.8, 1000, 200, 1), '6.750000'));
  it('granite 6.5e-6, 1000 × 150: 5.416667 µm', () => expectPrinted(bow(6.5, 1000, 150, 1), '5.416667'));
  it('steel 11.5e-6, 1000 × 60, 0.5 K: 11.979167 µm', () =>
    expectPrinted(bow(11.5, 1000, 60, 0.5), '11.979167'));
  it('the trade’s line: 11e-6, 1000 × 100, 1 K: 13.75 µm (derived); cooler on top bows it down', () => {
    expectPrinted(bow(11, 1000, 100, 1), '13.75');
    expectPrinted(bow(11, 1000, 100, -1), '-13.75');
  });
});

describe('1000 mm warmed by 1 K (seen)', () => {
  it.each([
    ['cast iron', 10.8, '10.8000'],
    ['steel', 11.5, '11.5000'],
    ['granite', 7.9, '7.9000'],
  ])('%s grows %d µm', (_, expansion_um_mK, printed) =>
    expectPrinted(
      sumOf('thermal-growth', { length_mm: 1000, warmer_K: 1, expansion_um_mK, other_um_mK: 0 }).growth!
        .value,
      printed,
    ),
  );
});
