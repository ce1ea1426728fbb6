import type { Exclusion } from '../core/print/exclusion.ts';
import type { PlaceMm, PlacePx } from '../core/print/picture.ts';
import { drawing } from './drawing.ts';
import { overPhotoColours, plate, rimmedPath } from './print-overlay-marks.ts';
import { type OverlayView, onScreen } from './print-overlay-view.ts';
import { type Shape, shape } from './shape.ts';

export interface ExclusionFigure {
  readonly title: string;
  readonly view: OverlayView;
  readonly exclusions: readonly Exclusion[];
  /** The one that is worked on: its points are drawn as grips. */
  readonly chosen?: number | undefined;
  /** The point of it that is moved; left out, the whole. */
  readonly point?: number | undefined;
  /** A groove's first end, or a patch's first corners, while they are no mark yet. */
  readonly ends?: readonly PlaceMm[] | undefined;
  /** Each with its number, from 1. */
  readonly numbered?: boolean;
}

/** Grooves, holes and patches over the photo, as they lie there: a veil, and an edge of dots that is told without colour. */
export function exclusionFigure(figure: ExclusionFigure): Shape {
  const { title, view, exclusions, chosen, point, ends = [], numbered = false } = figure;
  return drawing(
    { title, width: view.width, height: view.height },
    exclusions.flatMap((one, k) => dotted(one, view, k === chosen)),
    numbered ? exclusions.flatMap((one, k) => numberOf(one, k, view)) : [],
    ends.length > 1
      ? rimmedPath(
          ends.map((at) => onScreen(view, at)),
          2,
        )
      : [],
    ends.flatMap((at) => grip(onScreen(view, at), true)),
    chosen !== undefined && exclusions[chosen]
      ? pointsOf(exclusions[chosen]).flatMap((at, k) => grip(onScreen(view, at), point === k))
      : [],
  );
}

/** The places that make it: a hole's middle, a groove's ends and bends, a patch's corners. */
export const pointsOf = (one: Exclusion): readonly PlaceMm[] =>
  one.type === 'circle' ? [{ x: one.x, y: one.y }] : one.points;

const dots = 5;

function dotted(one: Exclusion, view: OverlayView, thick: boolean): Shape[] {
  const { sheet, ink } = overPhotoColours;
  const d = `M${edgeOf(one)
    .map((place) => textOf(onScreen(view, place)))
    .join('L')}z`;
  return [
    shape('path', {
      d,
      fill: sheet,
      'fill-opacity': 0.32,
      // As the reading fills it, where a mask file's sides cross.
      ...(one.type === 'polygon' ? { 'fill-rule': 'evenodd' } : {}),
      stroke: sheet,
      'stroke-width': thick ? 6 : 4.5,
      'stroke-linejoin': 'round',
    }),
    shape('path', {
      d,
      fill: 'none',
      stroke: ink,
      'stroke-width': thick ? 3.6 : 2.6,
      'stroke-linecap': 'round',
      'stroke-linejoin': 'round',
      // Strokes of no length with round ends: dots.
      'stroke-dasharray': `0 ${thick ? dots + 1 : dots}`,
    }),
  ];
}

const textOf = ({ x, y }: PlacePx): string => `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`;

function grip({ x, y }: PlacePx, full: boolean): Shape[] {
  const { sheet, ink } = overPhotoColours;
  const [fill, stroke] = full ? [ink, sheet] : [sheet, ink];
  return [shape('circle', { cx: x, cy: y, r: 8, fill, stroke, 'stroke-width': 2.5 })];
}

/** Beside the first of its points, clear of the grip there. */
function numberOf(one: Exclusion, k: number, view: OverlayView): Shape[] {
  const { x, y } = onScreen(view, pointsOf(one)[0]!);
  return plate({ at: { x: x + 22, y: y - 16 }, words: String(k + 1) }, view);
}

/** Degrees between the points of a bow. */
const bow_deg = 12;

/** Its edge on the surface, mm. */
export function edgeOf(one: Exclusion): readonly PlaceMm[] {
  switch (one.type) {
    case 'circle':
      return arc(one, one.r, 0, 2 * Math.PI);
    case 'polygon':
      return one.points;
    case 'polyline': {
      const points = one.points.filter((p, k) => k === 0 || far(p, one.points[k - 1]!) > 0);
      if (points.length < 2) return arc(points[0]!, one.width / 2, 0, 2 * Math.PI);
      return [...sideOf(points, one.width / 2), ...sideOf(points.toReversed(), one.width / 2)];
    }
  }
}

const far = (p: PlaceMm, q: PlaceMm): number => Math.hypot(p.x - q.x, p.y - q.y);

function arc({ x, y }: PlaceMm, r: number, from: number, to: number): PlaceMm[] {
  const many = Math.max(1, Math.ceil((Math.abs(to - from) * 180) / Math.PI / bow_deg));
  return Array.from({ length: many + 1 }, (_, k) => {
    const angle = from + ((to - from) * k) / many;
    return { x: x + r * Math.cos(angle), y: y + r * Math.sin(angle) };
  });
}

/** One side of a groove from its first point to its last, round the last by half a turn. */
function sideOf(points: readonly PlaceMm[], reach: number): PlaceMm[] {
  const ways = points
    .slice(1)
    .map((p, k) => Math.atan2(p.y - points[k]!.y, p.x - points[k]!.x) - Math.PI / 2);
  const side: PlaceMm[] = [...arc(points[0]!, reach, ways[0]!, ways[0]!).slice(0, 1)];
  for (let k = 1; k < points.length - 1; k++) {
    const [before, after] = [ways[k - 1]!, ways[k]!];
    const turn = ((((after - before + Math.PI) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)) - Math.PI;
    const bend = points[k]!;
    if (turn >= 0) side.push(...arc(bend, reach, before, before + turn));
    else {
      // The bend's inner side: where both legs' edges meet, or the bend itself where a leg is too short for that.
      const leg = Math.min(far(points[k - 1]!, bend), far(bend, points[k + 1]!));
      const back = reach * Math.tan(-turn / 2);
      const out = reach / Math.cos(turn / 2);
      const middle = before + turn / 2;
      side.push(
        back < leg ? { x: bend.x + out * Math.cos(middle), y: bend.y + out * Math.sin(middle) } : bend,
      );
    }
  }
  const last = ways.at(-1)!;
  return [...side, ...arc(points.at(-1)!, reach, last, last + Math.PI)];
}
