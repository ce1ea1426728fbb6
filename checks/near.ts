import { expect } from 'vitest';

/** Agreement with a printed number: half its last digit. `printed` is the text as printed, so that its digits can be counted. */
export function expectPrinted(found: number, printed: string): void {
  const [mantissa, exponent] = printed.toLowerCase().split('e') as [string, string | undefined];
  const decimals = mantissa.split('.')[1]?.length ?? 0;
  const half = 0.5 * 10 ** (Number(exponent ?? 0) - decimals);
  const off = Math.abs(found - Number(printed));
  expect(off, `found ${found}, printed ${printed}`).toBeLessThanOrEqual(half * (1 + 1e-9));
}

/** Agreement to a share of the expected value. */
export function expectNear(found: number, wanted: number, share: number): void {
  expect(Math.abs(found - wanted), `found ${found}, wanted ${wanted}`).toBeLessThanOrEqual(
    share * Math.abs(wanted),
  );
}
