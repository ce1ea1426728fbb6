import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bendOf, bent, halfCover } from './half-cover.ts';

describe('half cover', () => {
  it('is where an element shows the mean light of film and bare surface, whatever veil lies over both', () => {
    // Film lets 4 % through, bare surface sends 1; a veil of 0 to 3 is added to both. Mixed light is worked out by hand.
    for (const veil of [0, 0.1, 0.5, 1, 3]) {
      const film = 0.04 + veil;
      const bare = 1 + veil;
      const mixed = (film + bare) / 2;
      const share = Math.log(mixed / bare) / Math.log(film / bare);
      expect(halfCover(film / bare)).toBeCloseTo(share, 12);
    }
  });

  it('lies at a half where film and bare surface hardly differ, and nearer to bare the darker film is', () => {
    expect(halfCover(0.9999)).toBeCloseTo(0.5, 3);
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.98, noNaN: true }), (q) => {
        expect(halfCover(q)).toBeLessThan(halfCover(q + 0.01));
      }),
    );
  });
});

describe('the bent scale', () => {
  it('rises from bare to full film and beyond for every q, and keeps 0 and 1', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 5, noNaN: true }),
        fc.double({ min: -0.5, max: 1.5, noNaN: true }),
        (q, share) => {
          const bend = bendOf(q);
          expect(bent(share + 0.01, bend)).toBeGreaterThan(bent(share, bend));
          expect(bent(0, bend)).toBe(0);
          expect(bent(1, bend)).toBe(1);
        },
      ),
    );
  });

  it('brings half cover under a veil back to where it lies on a usual print, or a little below', () => {
    const usual = halfCover(0.215);
    expect(bent(usual, bendOf(0.215))).toBeCloseTo(usual, 12);
    for (const q of [0.3, 0.4, 0.5, 0.6]) {
      const here = bent(halfCover(q), bendOf(q));
      expect(here).toBeLessThan(usual);
      expect(here).toBeGreaterThan(usual - 0.05);
    }
  });
});
