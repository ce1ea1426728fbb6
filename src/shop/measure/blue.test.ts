import { describe, expect, it } from 'vitest';
import { blueWords, nextOpen, type PrintDraft, printOf, shareOfWord, withZone } from './blue.ts';

const pads = [
  { name: 'front flank', zones: 3 },
  { name: 'flat', zones: 2 },
];

describe('blue by zone', () => {
  it('offers no "light", which means opposite heights to different people', () => {
    expect(blueWords).toEqual(['burnished', 'heavy', 'faint', 'none']);
    const shares = blueWords.map((word) => shareOfWord[word]);
    expect([...shares].sort((a, b) => b - a)).toEqual(shares);
    expect(shares[0]).toBeLessThanOrEqual(1);
    expect(shares.at(-1)).toBe(0);
  });
  it('keeps whole pads, counts what is left, and forgets nothing on the way through storage', () => {
    let draft: PrintDraft = {};
    draft = withZone(draft, pads, { pad: 'flat', zone: 1 }, { word: 'heavy' });
    expect(printOf(draft, pads)).toEqual({ left: 4, share: {}, tapped: {} });
    draft = JSON.parse(JSON.stringify(draft)) as PrintDraft;
    draft = withZone(draft, pads, { pad: 'flat', zone: 0 }, { share: 0.42 });
    expect(printOf(draft, pads)).toEqual({ left: 3, share: { flat: [0.42, 0.7] }, tapped: {} });
    for (const zone of [0, 1, 2])
      draft = withZone(draft, pads, { pad: 'front flank', zone }, { word: zone === 1 ? 'none' : 'faint' });
    expect(printOf(draft, pads)).toEqual({
      left: 0,
      share: { 'front flank': [0.25, 0, 0.25], flat: [0.42, 0.7] },
      tapped: { 'front flank': ['faint', 'none', 'faint'] },
    });
  });
  it('goes on to the next zone that has no answer, and round', () => {
    const draft = withZone({}, pads, { pad: 'flat', zone: 0 }, { word: 'none' });
    expect(nextOpen(draft, pads, { pad: 'front flank', zone: 2 })).toEqual({ pad: 'flat', zone: 1 });
    expect(nextOpen(draft, pads, { pad: 'flat', zone: 1 })).toEqual({ pad: 'front flank', zone: 0 });
  });
});
