import { displacement, type Pose } from '../core/body/displacement.ts';
import type { Slide } from '../core/body/slide.ts';
import { add, scale, type Vector } from '../core/body/vector.ts';
import type { PlaceWords } from '../core/ledger/setup.ts';
import { benchWords, onWays } from './bench-side.ts';
import { drawing } from './drawing.ts';
import { pathThrough, type Spot } from './line.ts';
import { palette } from './palette.ts';
import { type Shape, shape } from './shape.ts';
import { type Bar, barOutline, barsOf, type SectionPoint, slideBulk, wayOutline } from './slide-section.ts';
import { twoFigures } from './sweep-plot.ts';
import { label } from './text.ts';

export interface SolidViewFigure {
  readonly title: string;
  readonly desc?: string;
  readonly slide: Slide;
  /** How it sits, from the place that is wanted or nominal. */
  readonly pose: Pose;
  /** How it is wanted; left out: nominal. Drawn dashed. */
  readonly wanted?: Pose;
  readonly places: PlaceWords;
  /** What is drawn whole and dashed, in words; left out: "as it sits" and "as wanted". */
  readonly sits_words?: string;
  readonly wanted_words?: string;
  readonly width: number;
}

/** A point of the part on its ways: along the travel, across, out, mm. */
type Place = readonly [number, number, number];

/** A block with a section across and two ends along the travel. */
interface Prism {
  readonly section: readonly SectionPoint[];
  readonly from_mm: number;
  readonly to_mm: number;
}

/** How far the largest displacement of the pose is drawn, share of the slide's length. */
const drawnTilt = 0.09;

/** The slide on its ways, small, line-drawn, its displacement enlarged so that it shows; the wanted place dashed. It explains; nothing is read from it. */
export function solidView(figure: SolidViewFigure): Shape {
  const { slide, pose, width, places } = figure;
  const sits = figure.sits_words ?? 'as it sits';
  const dashed = figure.wanted_words ?? 'as wanted';
  const nominal: Pose = { t_um: [0, 0, 0], turn_urad: [0, 0, 0] };
  const wanted = figure.wanted ?? nominal;
  const bars = barsOf(slide);
  const bulk = slideBulk(bars);
  const from = Math.min(...bars.map((bar) => bar.from_mm));
  const to = Math.max(...bars.map((bar) => bar.to_mm));
  const length = to - from;
  const ways = bars.map((bar) => ({
    section: wayOutline(bar, bulk.base_mm),
    from_mm: from - length * 0.35,
    to_mm: to + length * 0.35,
  }));
  const body = slideBody(bars, from, to);
  const times = exaggeration(figure, body, wanted, length);
  const side = onWays(slide);
  const inSlide = ([along, across, out]: Place): Vector =>
    add(add(scale(side.right, along), scale(side.away, across)), scale(side.up, out));
  const moved =
    (by: Pose) =>
    (place: Place): Place => {
      const u = side.place(scale(displacement(by, inSlide(place)), times / 1000));
      return [place[0] + u.right_mm, place[1] + u.away_mm, place[2] + u.up_mm];
    };
  const still = (place: Place): Place => place;
  const all = [
    ...ways.flatMap((way) => corners(way)),
    ...[pose, wanted].flatMap((by) => body.flatMap((block) => corners(block).map(moved(by)))),
  ];
  const height = Math.round(width * 0.52) + 30;
  const project = fittedView(all, { x: 2, y: 36, width: width - 4, height: height - 58 });
  const words = benchWords(side, places);
  const wayEnd = (end: number): Spot => project([end, bars[0]!.near_mm, bulk.base_mm]);
  const left = wayEnd(from - length * 0.35);
  return drawing(
    {
      ...figure,
      desc:
        figure.desc ??
        `${sits.charAt(0).toUpperCase()}${sits.slice(1)}, drawn ${twoFigures(times)} times too far out; dashed ${dashed}.`,
      height,
    },
    ways
      .toReversed()
      .flatMap((way) => prism(way, still, project, { fill: palette.steel, stroke: palette.edge })),
    body
      .toReversed()
      .flatMap((block) => prism(block, moved(pose), project, { fill: palette.sheet, stroke: palette.ink })),
    body.map((block) => topOutline(block, moved(wanted), project)),
    label(width, 14, `${sits}, ${figure.sits_words === undefined ? 'tilt ' : ''}× ${twoFigures(times)}`, {
      size: 14,
      weight: 640,
      anchor: 'end',
    }),
    label(width, 31, `dashed: ${dashed}`, { size: 14, weight: 480, fill: palette.ink2, anchor: 'end' }),
    label(Math.max(left[0] - 4, 0), height - 4, words.left, { size: 14, weight: 500, fill: palette.ink2 }),
  );
}

/** Bars over their ways and a neck that joins them, as blocks; near side first. */
function slideBody(bars: readonly Bar[], from: number, to: number): Prism[] {
  const bulk = slideBulk(bars);
  const thin = bulk.thick_mm * 0.35;
  const seat = Math.max(...bars.map((bar) => bar.high_mm));
  const blocks = bars.map((bar) => ({
    section: barOutline(bar, bulk.border_mm, bulk.top_mm),
    from_mm: from,
    to_mm: to,
  }));
  const necks = bars.slice(1).map((bar, i) => ({
    section: [
      [bars[i]!.far_mm + bulk.border_mm, seat + thin],
      [bar.near_mm - bulk.border_mm, seat + thin],
      [bar.near_mm - bulk.border_mm, bulk.top_mm],
      [bars[i]!.far_mm + bulk.border_mm, bulk.top_mm],
    ] as const,
    from_mm: from + (to - from) * 0.3,
    to_mm: to - (to - from) * 0.3,
  }));
  return blocks.flatMap((block, i) => (necks[i] ? [block, necks[i]] : [block]));
}

/** How many times a displacement is enlarged: two figures, so that the largest one shows and stays on the sheet. */
function exaggeration(figure: SolidViewFigure, body: readonly Prism[], wanted: Pose, length: number): number {
  const side = onWays(figure.slide);
  const largest_um = Math.max(
    ...body.flatMap(corners).flatMap(([along, across, out]) => {
      const p = add(add(scale(side.right, along), scale(side.away, across)), scale(side.up, out));
      return [figure.pose, wanted].map((pose) => Math.hypot(...displacement(pose, p)));
    }),
  );
  const times = (length * drawnTilt * 1000) / Math.max(largest_um, 0.5);
  return Number(twoFigures(Math.min(times, 20000)));
}

const corners = (block: Prism): Place[] =>
  block.section.flatMap(([across, out]): Place[] => [
    [block.from_mm, across, out],
    [block.to_mm, across, out],
  ]);

/** Axonometric: the travel falls to the right, across climbs to the right, out is up. */
const flat = ([along, across, out]: Place): Spot => [
  along * 0.86 + across * 0.62,
  along * 0.24 - across * 0.42 - out * 0.9,
];

function fittedView(
  places: readonly Place[],
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): (place: Place) => Spot {
  const spots = places.map(flat);
  const xs = spots.map((spot) => spot[0]);
  const ys = spots.map((spot) => spot[1]);
  const left = Math.min(...xs);
  const top = Math.min(...ys);
  const by = Math.min(box.width / (Math.max(...xs) - left || 1), box.height / (Math.max(...ys) - top || 1));
  const offX = box.x + (box.width - (Math.max(...xs) - left) * by) / 2;
  return (place) => {
    const spot = flat(place);
    return [offX + (spot[0] - left) * by, box.y + (spot[1] - top) * by];
  };
}

/** The faces of a block, far ones first, so that near ones hide them. */
function prism(
  block: Prism,
  move: (place: Place) => Place,
  project: (place: Place) => Spot,
  look: { readonly fill: string; readonly stroke: string },
): Shape[] {
  const { section, from_mm, to_mm } = block;
  const at = (along: number, point: SectionPoint): Place => move([along, point[0], point[1]]);
  const sides = section.map((point, i) => {
    const next = section[(i + 1) % section.length]!;
    return [at(from_mm, point), at(from_mm, next), at(to_mm, next), at(to_mm, point)];
  });
  const end = section.map((point) => at(to_mm, point));
  const start = section.map((point) => at(from_mm, point));
  return [start, ...sides.toSorted((a, b) => depth(a) - depth(b)), end].map((face) =>
    shape('path', {
      d: pathThrough(face.map(project), true),
      fill: look.fill,
      stroke: look.stroke,
      'stroke-width': 1.2,
      'stroke-linejoin': 'round',
    }),
  );
}

/** How near to the viewer a face is: nearer is more to the plus end, the near side and up. */
const depth = (face: readonly Place[]): number =>
  face.reduce((sum, [along, across, out]) => sum + along * 0.1 - across * 0.7 + out * 0.6, 0) / face.length;

function topOutline(block: Prism, move: (place: Place) => Place, project: (place: Place) => Spot): Shape {
  const high = Math.max(...block.section.map((point) => point[1]));
  const across = block.section.map((point) => point[0]);
  const near = Math.min(...across);
  const far = Math.max(...across);
  const outline: Place[] = [
    [block.from_mm, near, high],
    [block.from_mm, far, high],
    [block.to_mm, far, high],
    [block.to_mm, near, high],
  ];
  return shape('path', {
    d: pathThrough(
      outline.map((place) => project(move(place))),
      true,
    ),
    fill: 'none',
    stroke: palette.ink,
    'stroke-width': 1.2,
    'stroke-dasharray': '5 4',
  });
}
