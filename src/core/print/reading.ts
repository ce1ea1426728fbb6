import type { Exclusion } from './exclusion.ts';
import type { Corners, Picture, SurfaceSize } from './picture.ts';

/** What a print reading is asked. */
export interface PrintInput {
  readonly picture: Picture;
  readonly corners: Corners;
  readonly size: SurfaceSize;
  readonly exclusions?: readonly Exclusion[];
  /** Side of the squares that are counted in, mm: 25, or 25.4; 25 when left out. */
  readonly cell_mm?: number;
  /** Zones along the length whose bearing share is wanted (the pad's zones); none when left out. */
  readonly zones?: number;
}

/** A connected region of contact of at least 0.5 mm². */
export interface Spot {
  /** Its centroid. */
  readonly x_mm: number;
  readonly y_mm: number;
  readonly area_mm2: number;
  /** Share of it that is burnished: a hard spot, bright metal where the blue was rubbed away, 0 to 1. */
  readonly burnished: number;
}

export interface Cell {
  readonly col: number;
  readonly row: number;
  /** Spots whose centroid lies in it. */
  readonly count: number;
  /** Contact over net area. */
  readonly bearing_pct: number;
  /** Cut by the edge of the surface or by something excluded: left out of the evenness figures. */
  readonly partial: boolean;
  /** Net of edges, exclusions and unreadable glare. */
  readonly net_mm2: number;
  /** Share clipped by glare; above 5 the square is not readable. */
  readonly unreadable_pct: number;
}

/** How evenly it bears, over whole squares; NaN never: absent where fewer than two whole squares are readable. */
export interface Evenness {
  /** Variance over mean of the counts: 1 random, less is regular, more is clumped. */
  readonly dispersion?: number;
  /** Standard deviation over mean of the squares' bearing. */
  readonly bearing_cv?: number;
  readonly empty_squares: number;
  /** Longest straight run along the surface without contact, mm. */
  readonly longest_bare_mm: number;
  /** Bearing's first-order trend, percentage points from one end to the other (plus: more at x = L), and from edge to edge (plus: more at y = W). */
  readonly along_pct: number;
  readonly across_pct: number;
}

/** How far the photo itself can be trusted. */
export interface PhotoTrust {
  /** 0 to 1: the least of its parts. Below 0.5: take it again. */
  readonly confidence: number;
  readonly px_per_mm: number;
  /** Width of the sharpest edges, mm (one sd of the blur). */
  readonly blur_mm: number;
  readonly glare_pct: number;
  /** Distance of blue from bare surface over the noise of the bare surface. */
  readonly separation: number;
}

export type PrintWarningCode =
  | 'blurred'
  | 'glare'
  | 'low resolution'
  | 'faint blue'
  | 'over-blued'
  | 'merged contact'
  | 'much bearing'
  | 'nearly bare'
  | 'clipped';

export interface PrintWarning {
  readonly code: PrintWarningCode;
  /** What is wrong and what to do about it. */
  readonly text: string;
}

/** A print, read. */
export interface PrintReading {
  readonly cells: readonly Cell[];
  readonly spots: readonly Spot[];
  /** Spots per 25 mm square (625 mm²) of net area, whatever the squares' side. */
  readonly density_per_25mm: number;
  readonly bearing_pct: number;
  readonly net_area_mm2: number;
  readonly evenness: Evenness;
  /** 10th, 25th, 50th, 75th and 90th percentile of the spots' areas, mm²; empty without spots. */
  readonly area_percentiles_mm2: readonly number[];
  /** Share of all contact that the largest region holds, 0 to 1. */
  readonly largest_share: number;
  /** Bearing share of each zone along the length, 0 to 1, where zones were asked for; absent where a zone has no readable area. */
  readonly zone_shares?: readonly (number | undefined)[];
  readonly trust: PhotoTrust;
  readonly warnings: readonly PrintWarning[];
}

/** Where there is contact, as the reader sees it: for drawing over the photo. */
export interface ContactMap {
  readonly width: number;
  readonly height: number;
  readonly px_per_mm: number;
  /** 0 bare, 1 contact, 2 burnished contact, 3 excluded, 4 unreadable; row by row from (0,0). Element centres at (i + 0.5) / px_per_mm. */
  readonly is: Uint8Array;
}
