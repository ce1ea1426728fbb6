import { group } from './drawing.ts';
import { hatch } from './hatch.ts';
import { pathThrough, type Spot } from './line.ts';
import type { MapLayout } from './map-layout.ts';
import type { LyingPad } from './map-rows.ts';
import { palette } from './palette.ts';
import { type Shape, shape } from './shape.ts';
import { brokenLines, label } from './text.ts';

/** A stretch of the section for one row: where it stands along the strip, px. */
interface Face {
  readonly lying: LyingPad;
  readonly from: number;
  readonly to: number;
  readonly isNewBar: boolean;
}

/** A point of the profile: along the strip, and outwards from the casting's back, px. */
type Point = readonly [number, number];

/** Section through the part beside (or above) its map: hatched casting, heavy bearing faces, underside toward the map. */
export function mapSection(layout: MapLayout): Shape {
  const { section, isSectionBeside } = layout;
  const share = section.width / layout.rows.length;
  const faces = layout.rows.map(
    (laid, i): Face => ({
      lying: laid.row.pads[0]!,
      from: isSectionBeside ? laid.top : section.x + i * share + 8,
      to: isSectionBeside ? laid.bottom : section.x + (i + 1) * share - 8,
      isNewBar: laid.row.joint === 'new bar',
    }),
  );
  const spot = ([along, out]: Point): Spot =>
    isSectionBeside ? [section.x + out, along] : [along, section.y + out];
  const ends: Point = isSectionBeside
    ? [section.y, section.y + section.height]
    : [section.x, section.x + section.width];
  const deep = layout.style.section;
  const { outline, heavy } = profile(faces, deep, ends);
  const corners = [...outline, [ends[1], 0] as const, [ends[0], 0] as const].map(spot);
  const lines = heavy.map((face) =>
    shape('path', {
      d: pathThrough(face.map(spot)),
      stroke: palette.ink,
      'stroke-width': 3.6,
      fill: 'none',
    }),
  );
  return group(
    {},
    shape('path', { d: pathThrough(corners, true), fill: palette.paper }),
    shape('path', {
      d: hatch(corners, 45, 7),
      stroke: palette.edge,
      'stroke-width': 0.9,
      fill: 'none',
    }),
    shape('path', {
      d: pathThrough(corners, true),
      fill: 'none',
      stroke: palette.ink,
      'stroke-width': 1.5,
    }),
    lines,
    isSectionBeside ? [] : faceNames(layout, faces, section.y + deep + 17),
  );
}

/** Under a section that lies above the map each face has its name. */
const faceNames = (layout: MapLayout, faces: readonly Face[], y: number): Shape[] =>
  layout.rows.flatMap((laid, i) => {
    const face = faces[i]!;
    const name = laid.row.pads.map((pad) => pad.pad.name).join(', ');
    return brokenLines(name, 14, face.to - face.from + 14)
      .slice(0, 2)
      .map((words, k) =>
        label((face.from + face.to) / 2, y + k * 16, words, {
          size: 14,
          fill: palette.ink2,
          anchor: 'middle',
        }),
      );
  });

/**
 * The underside's outline from the far side to the near side, and the bearing faces in it.
 * A face that overhangs (a dovetail flank) is run through backwards, so that the casting hangs over it.
 */
function profile(
  faces: readonly Face[],
  deep: number,
  ends: Point,
): { outline: Point[]; heavy: [Point, Point][] } {
  const edges = faces.flatMap(({ lying }) => {
    const rise_mm = (lying.looks.away * lying.pad.width_mm) / 2;
    return [lying.up_mm - rise_mm, lying.up_mm + rise_mm];
  });
  const highest = Math.max(...edges);
  const range = highest - Math.min(...edges);
  const perMm = Math.min((deep * 0.55) / (range || 1), 3);
  const out = (up_mm: number): number => deep + (up_mm - highest) * perMm;
  const heavy = faces.map((face): [Point, Point] => {
    const { lying, from, to } = face;
    const rise_mm = (lying.looks.away * lying.pad.width_mm) / 2;
    const isPlumb = Math.abs(lying.looks.up) < 0.1;
    const middle = (from + to) / 2;
    const [start, end] = isPlumb ? [middle, middle] : lying.looks.up > 0 ? [from, to] : [to, from];
    return [
      [start, out(lying.up_mm - rise_mm)],
      [end, out(lying.up_mm + rise_mm)],
    ];
  });
  const outline: Point[] = [[ends[0], heavy[0]?.[0][1] ?? deep]];
  heavy.forEach((face, i) => {
    const before = heavy[i - 1];
    if (before && faces[i]!.isNewBar) {
      const relief = Math.max(Math.min(before[1][1], face[0][1]) - deep * 0.32, deep * 0.2);
      const air = Math.min((faces[i]!.from - faces[i - 1]!.to) * 0.2, 10);
      const from = faces[i - 1]!.to + air;
      const to = faces[i]!.from - air;
      outline.push([from, before[1][1]], [from, relief], [to, relief], [to, face[0][1]]);
    }
    outline.push(...face);
  });
  outline.push([ends[1], heavy.at(-1)?.[1][1] ?? deep]);
  return { outline, heavy };
}
