import { expect, it } from 'vitest';
import { shareRange } from './compare-words.ts';

const said = (...given: Parameters<typeof shareRange>) => shareRange(...given)?.replace(/\s/g, ' ');

it('a foretold share is told as a range of one sd to each side, and never beyond none or all', () => {
  expect(said(0.5, 0.26)).toBe('24 to 76 %');
  expect(said(0.9, 0.3)).toBe('60 to 100 %');
  expect(said(0.1, 0.23)).toBe('0 to 33 %');
  expect(said(0.5, undefined)).toBe('50 %');
  expect(said(undefined, 0.2)).toBeUndefined();
});
