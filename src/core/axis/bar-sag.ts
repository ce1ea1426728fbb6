import { limpness, type Section, type Stiff } from '../kit/beam.ts';

/** A test bar. */
export interface Bar extends Stiff {
  readonly diameter_mm: number;
  /** 0 for a solid one. */
  readonly bore_mm: number;
}

const limp = ({ diameter_mm, bore_mm, ...stiff }: Bar): number => {
  const section: Section = { kind: 'round', diameter_mm, bore_mm };
  return limpness(section, stiff);
};

/**
 * How far a bar held at one end hangs down at a place, µm, plus: down.
 *
 *     q x² (6 L² − 4 L x + x²) / 24 EI
 *
 * @param out_mm  how far it stands out, L
 * @param at_mm   the place, from where it is held, x
 * Source: beam tables (Euler and Bernoulli); at x = L it is qL⁴/8EI.
 */
export function heldSag(bar: Bar, out_mm: number, at_mm: number): number {
  const x = at_mm / 1000;
  const L = out_mm / 1000;
  return ((limp(bar) * x ** 2 * (6 * L ** 2 - 4 * L * x + x ** 2)) / 24) * 1e6;
}

/**
 * How far a bar between centres hangs down at a place, µm, plus: down.
 *
 *     q x (L³ − 2 L x² + x³) / 24 EI
 *
 * Source: beam tables; in the middle it is 5 qL⁴/384EI.
 */
export function centredSag(bar: Bar, between_mm: number, at_mm: number): number {
  const x = at_mm / 1000;
  const L = between_mm / 1000;
  return ((limp(bar) * x * (L ** 3 - 2 * L * x ** 2 + x ** 3)) / 24) * 1e6;
}
