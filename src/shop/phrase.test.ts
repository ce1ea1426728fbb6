import { describe, expect, it } from 'vitest';
import { capital, chanceWords, counted, phraseText } from './phrase.ts';

describe('words for numbers', () => {
  it('chances are told as a person bets', () => {
    expect(chanceWords(0.8)).toBe('8 chances in 10');
    expect(chanceWords(0.12)).toBe('1 chance in 10');
    expect(chanceWords(0.94)).toBe('9 chances in 10');
    expect(chanceWords(0.97)).toBe('97 chances in 100');
    expect(chanceWords(0.012)).toBe('1 chance in 100');
    expect(chanceWords(0.9964)).toBe('996 chances in 1000');
  });
  it('nothing under 999 in 1000 is called sure', () => {
    for (let k = 1; k < 999; k++) expect(chanceWords(k / 1000)).toMatch(/chances? in 10+$/);
    expect(chanceWords(0.9995)).toBe('as good as sure');
  });
  it('counts, begins and flattens', () => {
    expect(counted(1, 'zone')).toBe('1 zone');
    expect(counted(16, 'zone')).toBe('16 zones');
    expect(capital('level across')).toBe('Level across');
    expect(phraseText(['Facing comes out ', { b: 'convex' }, '.'])).toBe('Facing comes out convex.');
  });
});
