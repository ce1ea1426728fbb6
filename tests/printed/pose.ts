import type { Corners, PlaceMm, PlacePx, SurfaceSize } from '../../src/core/print/picture.ts';

/** How the phone was held. */
export interface PoseRecipe {
  /** From straight above, degrees. */
  readonly tilt_deg: number;
  /** Which way it leans: 0 over the edge y = W, 90 over the end x = 0. */
  readonly lean_deg: number;
  /** Turned in the picture. */
  readonly turn_deg: number;
  /** From the middle of the surface, over the surface's diagonal. */
  readonly distance: number;
  /** Share of the frame that the surface fills, 0 to 1. */
  readonly fill: number;
}

/** A pinhole camera over the plane of the surface. */
export interface Pose {
  readonly corners: Corners;
  readonly toPhoto: (place: PlaceMm) => PlacePx;
  /** Where the plane is seen by a pixel. */
  readonly toSurface: (place: PlacePx) => PlaceMm;
}

type Vector = readonly [number, number, number];

/** Rotates the plane under the camera, projects it, then sets the focal length so that the surface fills its share of the frame. */
export function poseOf(recipe: PoseRecipe, size: SurfaceSize, width_px: number, height_px: number): Pose {
  const { length_mm, width_mm } = size;
  const away = recipe.distance * Math.hypot(length_mm, width_mm);
  const tilt = (recipe.tilt_deg * Math.PI) / 180;
  const lean = (recipe.lean_deg * Math.PI) / 180;
  const turn = (recipe.turn_deg * Math.PI) / 180;
  const seen = (x: number, y: number): Vector => {
    // Turned so that the lean is along the second axis, tilted about the first, turned back and on in the picture.
    const u = Math.cos(lean) * x - Math.sin(lean) * y;
    const v = Math.sin(lean) * x + Math.cos(lean) * y;
    const flat = v * Math.cos(tilt);
    const deep = away - v * Math.sin(tilt);
    const back = turn - lean;
    return [Math.cos(back) * u - Math.sin(back) * flat, Math.sin(back) * u + Math.cos(back) * flat, deep];
  };
  const across = seen(1, 0);
  const down = seen(0, 1);
  const home: Vector = [0, 0, away];
  const first: Vector = [across[0], across[1], across[2] - away];
  const second: Vector = [down[0], down[1], down[2] - away];
  const bare = ({ x, y }: PlaceMm): PlacePx => {
    const [u, v, deep] = seen(x - length_mm / 2, y - width_mm / 2);
    return { x: u / deep, y: v / deep };
  };
  const ends = [
    { x: 0, y: 0 },
    { x: length_mm, y: 0 },
    { x: length_mm, y: width_mm },
    { x: 0, y: width_mm },
  ];
  const flat = ends.map(bare);
  const xs = flat.map(({ x }) => x);
  const ys = flat.map(({ y }) => y);
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const focal_px = recipe.fill * Math.min(width_px / (right - left), height_px / (bottom - top));
  const moveX = (width_px - 1) / 2 - (focal_px * (left + right)) / 2;
  const moveY = (height_px - 1) / 2 - (focal_px * (top + bottom)) / 2;
  const toPhoto = (place: PlaceMm): PlacePx => {
    const { x, y } = bare(place);
    return { x: focal_px * x + moveX, y: focal_px * y + moveY };
  };
  const [a, b, c, d] = ends.map(toPhoto);
  return {
    corners: [a!, b!, c!, d!],
    toPhoto,
    toSurface: (pixel) => {
      // The pixel's ray meets the plane home + s first + t second: two equations in s and t.
      const u = (pixel.x - moveX) / focal_px;
      const v = (pixel.y - moveY) / focal_px;
      const m00 = first[0] - u * first[2];
      const m01 = second[0] - u * second[2];
      const m10 = first[1] - v * first[2];
      const m11 = second[1] - v * second[2];
      const r0 = u * home[2] - home[0];
      const r1 = v * home[2] - home[1];
      const det = m00 * m11 - m01 * m10;
      return {
        x: (r0 * m11 - r1 * m01) / det + length_mm / 2,
        y: (m00 * r1 - m10 * r0) / det + width_mm / 2,
      };
    },
  };
}
