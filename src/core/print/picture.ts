/** A photo as decoded: 8-bit RGB in sRGB, three bytes a pixel, row by row from the top left, turned the right way up already. */
export interface Picture {
  readonly width_px: number;
  readonly height_px: number;
  /** Length 3 · width_px · height_px. */
  readonly rgb: Uint8Array | Uint8ClampedArray;
}

/** A place in a photo, px: x to the right, y down, pixel centres at whole numbers. */
export interface PlacePx {
  readonly x: number;
  readonly y: number;
}

/** A place on the printed surface, mm: x along its length, y across. */
export interface PlaceMm {
  readonly x: number;
  readonly y: number;
}

/** Where the surface's corners lie in the photo, in this order: (0,0), (L,0), (L,W), (0,W). Either way round: a part seen from below is mirrored. */
export type Corners = readonly [PlacePx, PlacePx, PlacePx, PlacePx];

/** Length and width of the surface, mm. */
export interface SurfaceSize {
  readonly length_mm: number;
  readonly width_mm: number;
}
