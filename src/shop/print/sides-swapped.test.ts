import { describe, expect, it } from 'vitest';
import type { Corners } from '../../core/print/picture.ts';
import { sidesSwapped } from './sides-swapped.ts';

const wide: Corners = [
  { x: 100, y: 100 },
  { x: 1100, y: 120 },
  { x: 1080, y: 420 },
  { x: 120, y: 400 },
];
const turned: Corners = [wide[1], wide[2], wide[3], wide[0]];
const codes = (corners: Corners, length_mm: number, width_mm: number) =>
  sidesSwapped(corners, { length_mm, width_mm }).map((warning) => warning.code);

describe('length and width the wrong way round', () => {
  it('is seen where the long side of the photo is said to be the short one, and only there', () => {
    expect(codes(wide, 300, 100)).toEqual([]);
    expect(codes(turned, 300, 100)).toEqual(['sides swapped']);
    expect(codes(wide, 100, 300)).toEqual(['sides swapped']);
    expect(codes(turned, 100, 300)).toEqual([]);
  });
  it('is not judged on a face that is nearly square: tilt changes its look as much', () => {
    expect(codes(wide, 90, 100)).toEqual([]);
    expect(codes(turned, 110, 100)).toEqual([]);
  });
  it('says what was seen and both sizes', () => {
    expect(sidesSwapped(turned, { length_mm: 300, width_mm: 100 })[0]!.text).toMatch(/short.*300 mm.*100 mm/);
  });
});
