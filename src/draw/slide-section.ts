import type { Slide } from '../core/body/slide.ts';
import { onWays } from './bench-side.ts';
import { type LyingPad, mapRows } from './map-rows.ts';

/** A point of the section across the ways, mm: across and out. */
export type SectionPoint = readonly [across_mm: number, out_mm: number];

/** Faces that stand together on one bar of the casting, and on one way. */
export interface Bar {
  readonly pads: readonly LyingPad[];
  /** The faces' profile from the near side to the far side. */
  readonly faces: readonly (readonly [SectionPoint, SectionPoint])[];
  readonly near_mm: number;
  readonly far_mm: number;
  readonly low_mm: number;
  readonly high_mm: number;
  /** The ends of its pads along the travel. */
  readonly from_mm: number;
  readonly to_mm: number;
}

/** The bars of a slide as it sits on its ways, near side first. */
export function barsOf(slide: Slide): Bar[] {
  const rows = mapRows(slide, onWays(slide));
  const groups: LyingPad[][] = [];
  rows.forEach((row, i) => {
    const before = rows[i - 1]?.pads[0];
    const here = row.pads[0]!;
    const isApart = before
      ? before.away_mm - here.away_mm - before.halfAway_mm - here.halfAway_mm > 25 || row.joint === 'new bar'
      : true;
    if (isApart) groups.push([...row.pads]);
    else groups.at(-1)!.push(...row.pads);
  });
  return groups.map(barOf).reverse();
}

function barOf(pads: readonly LyingPad[]): Bar {
  const nearFirst = [...pads].sort((a, b) => a.away_mm - b.away_mm || a.left_mm - b.left_mm);
  const faces = nearFirst.map(faceOf);
  const points = faces.flat();
  const across = points.map((point) => point[0]);
  const out = points.map((point) => point[1]);
  return {
    pads: nearFirst,
    faces,
    near_mm: Math.min(...across),
    far_mm: Math.max(...across),
    low_mm: Math.min(...out),
    high_mm: Math.max(...out),
    from_mm: Math.min(...pads.map((pad) => pad.left_mm)),
    to_mm: Math.max(...pads.map((pad) => pad.right_mm)),
  };
}

/** A face from the near side to the far side, the slide's metal above it; one that overhangs runs back. */
function faceOf(pad: LyingPad): [SectionPoint, SectionPoint] {
  // `looks` is where the slide's face looks: down is minus up. Metal above and travel to the far side: (−up, away).
  const half = pad.pad.width_mm / 2;
  const along: SectionPoint = [-pad.looks.up * half, pad.looks.away * half];
  return [
    [pad.away_mm - along[0], pad.up_mm - along[1]],
    [pad.away_mm + along[0], pad.up_mm + along[1]],
  ];
}

/** The way under a bar: its faces, closed downwards to `base_mm`. */
export const wayOutline = (bar: Bar, base_mm: number): SectionPoint[] => [
  ...bar.faces.flat(),
  [bar.far_mm, base_mm],
  [bar.near_mm, base_mm],
];

/** The slide's bar over a way: its faces, a border on both sides, closed upwards to `top_mm`. */
export function barOutline(bar: Bar, border_mm: number, top_mm: number): SectionPoint[] {
  const first = bar.faces[0]![0];
  const last = bar.faces.at(-1)![1];
  return [
    [bar.near_mm - border_mm, first[1]],
    ...bar.faces.flat(),
    [bar.far_mm + border_mm, last[1]],
    [bar.far_mm + border_mm, top_mm],
    [bar.near_mm - border_mm, top_mm],
  ];
}

/** Sizes of a slide that its pads alone tell: how thick to draw the casting, its base and top, mm. */
export function slideBulk(bars: readonly Bar[]): {
  readonly thick_mm: number;
  readonly border_mm: number;
  readonly base_mm: number;
  readonly top_mm: number;
} {
  const breadth = Math.max(...bars.map((bar) => bar.far_mm)) - Math.min(...bars.map((bar) => bar.near_mm));
  const high = Math.max(...bars.map((bar) => bar.high_mm));
  const low = Math.min(...bars.map((bar) => bar.low_mm));
  const thick_mm = breadth * 0.12;
  return { thick_mm, border_mm: breadth * 0.035, base_mm: low - thick_mm * 1.3, top_mm: high + thick_mm };
}
