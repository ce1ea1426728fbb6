import { expect } from 'vitest';
import { note } from './trust/record.ts';

/** Agreement with a printed number: half its last digit. `printed` is the text as printed, so that its digits can be counted. */
export function expectPrinted(found: number, printed: string): void {
  const [mantissa, exponent] = printed.toLowerCase().split('e') as [string, string | undefined];
  const decimals = mantissa.split('.')[1]?.length ?? 0;
  const half = 0.5 * 10 ** (Number(exponent ?? 0) - decimals);
  const off = Math.abs(found - Number(printed));
  note({ found, wanted: Number(printed), tolerance: half, printed });
  expect(off, `found ${found}, printed ${printed}`).toBeLessThanOrEqual(half * (1 + 1e-9));
}

/** Agreement to a share of the expected value. */
export function expectNear(found: number, wanted: number, share: number): void {
  expectWithin(found, wanted, share * Math.abs(wanted));
}

/** Agreement to a difference. `of` says which one of many it was. */
export function expectWithin(found: number, wanted: number, tolerance: number, of = ''): void {
  note({ found, wanted, tolerance });
  expect(Math.abs(found - wanted), `${of} found ${found}, wanted ${wanted}`).toBeLessThanOrEqual(tolerance);
}

/** A word, a count or a list that is what the source says, not nearly so. */
export function expectSame(found: unknown, wanted: unknown): void {
  note({ found, wanted });
  expect(found).toEqual(wanted);
}
