import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { restInput } from '../src/contract/rest.ts';
import { rest } from '../src/shop/rest.ts';
import { expectWithin } from './near.ts';

/**
 * Source: cases of `rest` computed by an independent solver (not this code), handed over with the contract; seen, printed
 * to four decimals. Held to one part in a thousand, or half the last printed digit.
 */
describe('rest against an independent solver', () => {
  it.each([1, 2, 3, 4, 5, 6])('case %d', (k) => {
    const { input, expected } = JSON.parse(readFileSync(`checks/data/cases/rest-${k}.json`, 'utf8'));
    const answer = rest(restInput(input));
    if (!answer.ok) throw new Error(answer.text);
    const near = (found: readonly number[], wanted: readonly number[]) => {
      expect(found.length).toBe(wanted.length);
      wanted.forEach((value, i) => {
        expectWithin(found[i]!, value, Math.max(1e-4, 1e-3 * Math.abs(value)));
      });
    };
    near(answer.shift_um, expected.shift_um);
    near(answer.turn_urad, expected.turn_urad);
    near(answer.gap_um, expected.gap_um);
    near([answer.bearing_fraction], [expected.bearing_fraction]);
  });
});
