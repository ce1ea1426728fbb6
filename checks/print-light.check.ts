import { describe, it } from 'vitest';
import { rectified } from '../src/core/print/rectified.ts';
import { uprightCorners } from '../tests/fixture/drawn-discs.ts';
import { expectSame, expectWithin } from './near.ts';

/*
 * Source: IEC 61966-2-1, light of an sRGB value: value / 12.92 up to 0.04045, else ((value + 0.055) / 1.055)^2.4; the table of 8-bit
 * values below is from memory, and what it follows from. Blueness is the log of blue over red light, both raised by 0.002.
 */
const table: readonly [value: number, light: string][] = [
  [0, '0.00000000'],
  [1, '0.00030353'],
  [10, '0.00303527'],
  [11, '0.00334654'],
  [64, '0.05126946'],
  [128, '0.21586050'],
  [192, '0.52711513'],
  [255, '1.00000000'],
];
const size = { length_mm: 5, width_mm: 4 };
const raised = 0.002;

function ofColour(colour: readonly [number, number, number]) {
  const { at, width_px, height_px } = uprightCorners(size, 10);
  const rgb = Uint8Array.from({ length: 3 * width_px * height_px }, (_, k) => colour[k % 3]!);
  return rectified({ width_px, height_px, rgb }, at, size);
}

describe('light of sRGB values', () => {
  for (const [value, light] of table)
    it(`${value} is ${light} of full light`, () => {
      const { blueness, shade } = ofColour([255, 255, value]);
      const blue = Math.exp(blueness[0]!) * (1 + raised) - raised;
      expectWithin(blue, Number(light), 2e-7);
      const red = Math.exp(2 * ofColour([value, 255, 0]).shade[7]!) / (1 + raised) - raised;
      expectWithin(red, Number(light), 1e-6);
      expectWithin(shade[0], Math.log(1 + raised), 5e-7);
    });

  it('half of full light is 188 (187.5 by the formula): brightness doubles, blueness stays', () => {
    const half = ofColour([188, 188, 188]);
    const full = ofColour([255, 255, 255]);
    expectWithin(Math.exp(full.shade[0]! - half.shade[0]!), 2, 5e-2);
    expectSame(half.blueness[0], 0);
    expectSame(full.blueness[0], 0);
  });
});
