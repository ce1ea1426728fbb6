import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { plateInput } from '../src/contract/plate.ts';
import { plate } from '../src/shop/survey/plate.ts';
import { expectWithin } from './near.ts';

/**
 * Source: cases of `plate` computed by an independent solver (not this code), handed over with the contract; seen, printed to four
 * decimals. Held to half the last printed digit.
 */
describe('flatness against an independent solver', () => {
  it.each([1, 2, 3, 4, 5])('case %d', (k) => {
    const { input, expected } = JSON.parse(readFileSync(`checks/data/cases/plate-${k}.json`, 'utf8'));
    const answer = plate(plateInput(input));
    for (const key of ['least_squares', 'minimum_zone'] as const)
      expectWithin(answer.flatness_um[key], expected.flatness_um[key], 0.5001e-4);
    expect(answer.residual_um.length).toBe(input.points.length);
  });
});
