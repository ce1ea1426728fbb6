import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { lineInput } from '../src/contract/line.ts';
import { line } from '../src/shop/survey/line.ts';
import { expectWithin } from './near.ts';

/**
 * Source: cases of `line` computed by an independent solver (not this code), handed over with the contract; seen, printed to four
 * decimals. Held to half the last printed digit.
 */
describe('straightness against an independent solver', () => {
  it.each([1, 2, 3, 4, 5])('case %d', (k) => {
    const { input, expected } = JSON.parse(readFileSync(`checks/data/cases/line-${k}.json`, 'utf8'));
    const answer = line(lineInput(input));
    const near = (found: readonly number[], wanted: readonly number[]) => {
      expect(found.length).toBe(wanted.length);
      wanted.forEach((value, i) => {
        expectWithin(found[i]!, value, 0.5001e-4);
      });
    };
    near(answer.stations_mm, expected.stations_mm);
    near(answer.endpoint_um, expected.endpoint_um);
    for (const key of ['endpoint', 'least_squares', 'minimum_zone'] as const)
      near([answer.straightness_um[key]], [expected.straightness_um[key]]);
  });
});
