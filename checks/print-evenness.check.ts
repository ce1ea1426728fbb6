import { describe, it } from 'vitest';
import { noBits } from '../src/core/print/bits.ts';
import { evennessOf } from '../src/core/print/evenness.ts';
import type { Cell } from '../src/core/print/reading.ts';
import { expectPrinted, expectSame, expectWithin } from './near.ts';

/*
 * Index of dispersion: variance over mean of counts in squares; 1 random, less is regular, more is clumped (quadrat statistics).
 * Sources: Student, On the error of counting with a haemacytometer, Biometrika 5 (1907) 351–360, 400 squares of yeast cells, mean
 * 4.68, variance 4.46; Bortkiewicz 1898, deaths by horse kick in 200 corps-years, mean 0.61, variance 0.61. Tables from memory: that
 * their totals and means come out as printed is checked first.
 */
const yeast = [0, 20, 43, 53, 86, 70, 54, 37, 18, 10, 5, 2, 2];
const kicks = [109, 65, 22, 3, 1];

const spread = (table: readonly number[]) => table.flatMap((many, count) => Array<number>(many).fill(count));

const cellsOf = (counts: readonly number[]): Cell[] =>
  counts.map((count, k) => ({
    col: k,
    row: 0,
    count,
    bearing_pct: count,
    partial: false,
    net_mm2: 625,
    unreadable_pct: 0,
  }));

const evenness = (counts: readonly number[]) => evennessOf(cellsOf(counts), noBits(8, 8), noBits(8, 8));

/** Mean, and variance as printed then: over n. */
function printed(counts: readonly number[]) {
  const mean = counts.reduce((sum, one) => sum + one, 0) / counts.length;
  return { mean, variance: counts.reduce((sum, one) => sum + (one - mean) ** 2, 0) / counts.length };
}

describe('index of dispersion', () => {
  it('yeast cells: near 1, random', () => {
    const counts = spread(yeast);
    const { mean, variance } = printed(counts);
    expectSame(counts.length, 400);
    expectPrinted(mean, '4.68');
    expectPrinted(variance, '4.46');
    // Ours is over n − 1.
    expectWithin(evenness(counts).dispersion!, (4.4576 * 400) / 399 / 4.68, 5e-10);
  });

  it('horse kicks: near 1, random', () => {
    const counts = spread(kicks);
    const { mean, variance } = printed(counts);
    expectSame(counts.length, 200);
    expectPrinted(mean, '0.61');
    expectPrinted(variance, '0.61');
    expectWithin(evenness(counts).dispersion!, 1.0, 5e-2);
  });

  it('a lattice is 0; all in one of n squares is as many as there are; (n − 1) times it is chi-square', () => {
    expectSame(evenness(Array(24).fill(12)).dispersion, 0);
    // 24 spots in one of 24 squares: mean 1, sum of squares 24² − 24, over 23: 24.
    expectWithin(evenness([24, ...Array<number>(23).fill(0)]).dispersion!, 24, 5e-13);
    // Two halves, 10 and 14: variance 4·24/23, mean 12.
    const halves = Array.from({ length: 24 }, (_, k) => (k % 2 ? 10 : 14));
    expectWithin(23 * evenness(halves).dispersion!, (24 * 4) / 12, 5e-13);
  });
});
