import type { PlaceMm } from './picture.ts';

/** What is out of the net area: a hole, a groove, a patch. Places and sizes in mm on the surface. */
export type Exclusion =
  | { readonly type: 'circle'; readonly x: number; readonly y: number; readonly r: number }
  | { readonly type: 'polyline'; readonly width: number; readonly points: readonly PlaceMm[] }
  | { readonly type: 'polygon'; readonly points: readonly PlaceMm[] };
