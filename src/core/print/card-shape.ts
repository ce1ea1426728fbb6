import type { PlaceMm, SurfaceSize } from './picture.ts';

/**
 * The corner card: an A6 card with four black squares that lies in the plane of the surface. Places in mm from the card's
 * top left corner as it is read, x to the right, y down.
 */
export const cardShape = {
  length_mm: 148,
  width_mm: 105,
  square_mm: 14,
  /** Top left corners of the squares, in the order of a surface's corners. */
  squares: [
    { x: 8, y: 8 },
    { x: 126, y: 8 },
    { x: 126, y: 83 },
    { x: 8, y: 83 },
  ],
  /** White, in the middle of the first square: tells which way round the card lies. */
  dot_radius_mm: 2.5,
  /** A line to hold a rule against, from end to end. */
  check_mm: 100,
} as const satisfies SurfaceSize & {
  square_mm: number;
  squares: readonly PlaceMm[];
  dot_radius_mm: number;
  check_mm: number;
};
