import { describe, expect, it } from 'vitest';
import { capital, counted, firstSentence, phraseText } from './phrase.ts';

describe('words for numbers', () => {
  it('counts, begins and flattens', () => {
    expect(counted(1, 'zone')).toBe('1 zone');
    expect(counted(16, 'zone')).toBe('16 zones');
    expect(capital('level across')).toBe('Level across');
    expect(phraseText(['Facing comes out ', { b: 'convex' }, '.'])).toBe('Facing comes out convex.');
  });

  it('takes a first sentence from the rest, and not a decimal point for its end', () => {
    expect(firstSentence('Set 0.5 mm. Then wait. Then read.')).toEqual([
      'Set 0.5 mm.',
      'Then wait. Then read.',
    ]);
    expect(firstSentence('Only one.')).toEqual(['Only one.', '']);
  });
});
