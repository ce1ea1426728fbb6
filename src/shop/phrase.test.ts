import { describe, expect, it } from 'vitest';
import { capital, counted, phraseText } from './phrase.ts';

describe('words for numbers', () => {
  it('counts, begins and flattens', () => {
    expect(counted(1, 'zone')).toBe('1 zone');
    expect(counted(16, 'zone')).toBe('16 zones');
    expect(capital('level across')).toBe('Level across');
    expect(phraseText(['Facing comes out ', { b: 'convex' }, '.'])).toBe('Facing comes out convex.');
  });
});
