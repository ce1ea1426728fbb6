import { describe, expect, it } from 'vitest';
import { excluded } from '../core/print/excluded.ts';
import type { Exclusion } from '../core/print/exclusion.ts';
import type { PlaceMm } from '../core/print/picture.ts';
import { rasterPxPerMm } from '../core/print/rectified.ts';
import { edgeOf } from './print-overlay-exclusions.ts';

/** The shoelace formula: area within a line that does not cross itself, mm². */
const within = (edge: readonly PlaceMm[]): number =>
  Math.abs(
    edge.reduce((sum, p, k) => {
      const q = edge[(k + 1) % edge.length]!;
      return sum + (p.x * q.y - q.x * p.y) / 2;
    }, 0),
  );
const read_mm2 = (one: Exclusion): number =>
  excluded([one], 180 * rasterPxPerMm, 80 * rasterPxPerMm).reduce((sum, is) => sum + is, 0) /
  rasterPxPerMm ** 2;

describe('the edge that is drawn holds what the reading leaves out', () => {
  it.each<[string, Exclusion]>([
    ['a hole', { type: 'circle', x: 62, y: 33, r: 9 }],
    [
      'a straight groove',
      {
        type: 'polyline',
        width: 6,
        points: [
          { x: 21, y: 12 },
          { x: 133, y: 57 },
        ],
      },
    ],
    [
      'a zigzag, bent both ways',
      {
        type: 'polyline',
        width: 5,
        points: [
          { x: 14, y: 66 },
          { x: 52, y: 14 },
          { x: 91, y: 61 },
          { x: 128, y: 18 },
        ],
      },
    ],
    [
      'a patch',
      {
        type: 'polygon',
        points: [
          { x: 11, y: 8 },
          { x: 77, y: 19 },
          { x: 40, y: 63 },
        ],
      },
    ],
  ])('%s', (_, one) => {
    expect(Math.abs(within(edgeOf(one)) / read_mm2(one) - 1)).toBeLessThan(0.01);
  });
});
