import { describe, expect, it } from 'vitest';
import { fullCover } from '../core/print/cover.ts';
import { bearingSpots, seedOf } from './spots.ts';

const box = { x: 17, y: 23, width: 50, height: 52 };

/** Share of the box that the spots paint, counted on a fine grid. */
function painted(share: number, seed: string): number {
  const spots = bearingSpots(box, share, 2.7, seedOf(seed));
  let hits = 0;
  const grid = 160;
  for (let i = 0; i < grid; i++)
    for (let j = 0; j < grid; j++) {
      const x = box.x + ((i + 0.5) / grid) * box.width;
      const y = box.y + ((j + 0.5) / grid) * box.height;
      const isHit = spots.some((spot) => {
        const turn = (spot.turn_deg * Math.PI) / 180;
        const dx = x - spot.x;
        const dy = y - spot.y;
        const u = (dx * Math.cos(turn) + dy * Math.sin(turn)) / spot.long;
        const v = (-dx * Math.sin(turn) + dy * Math.cos(turn)) / spot.short;
        return u * u + v * v < 1;
      });
      if (isHit) hits++;
    }
  return hits / grid ** 2;
}

describe('blue spots', () => {
  it('paint 0.38 of the bearing share of a zone', () => {
    for (const share of [0.23, 0.61, 0.97]) {
      const found = painted(share, `flat 3 ${share}`);
      // Spots may lap a little, and the last one may go over.
      expect(found).toBeGreaterThan(fullCover * share * 0.9);
      expect(found).toBeLessThan(fullCover * share + 0.02);
    }
    expect(fullCover).toBe(0.38);
  });
  it('stay where they are as bearing grows, so that nothing crawls', () => {
    const thin = bearingSpots(box, 0.31, 2.7, seedOf('rear flank 2 4'));
    const full = bearingSpots(box, 0.93, 2.7, seedOf('rear flank 2 4'));
    expect(full.slice(0, thin.length)).toEqual(thin);
    expect(full.length).toBeGreaterThan(thin.length);
  });
  it('differ from zone to zone and from round to round', () => {
    const first = bearingSpots(box, 0.5, 2.7, seedOf('flat 2 4'))[0];
    expect(bearingSpots(box, 0.5, 2.7, seedOf('flat 3 4'))[0]).not.toEqual(first);
    expect(bearingSpots(box, 0.5, 2.7, seedOf('flat 2 5'))[0]).not.toEqual(first);
  });
  it('are none where nothing bears', () => {
    expect(bearingSpots(box, 0, 2.7, 77)).toEqual([]);
  });
});
