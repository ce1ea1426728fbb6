import type { Slide } from '../core/body/slide.ts';
import type { BlueWord, TurnedOver } from '../core/ledger/entry.ts';
import type { PlaceWords } from '../core/ledger/setup.ts';
import { type BenchWords, benchWords, onBench } from './bench-side.ts';
import { drawing } from './drawing.ts';
import { rectangle } from './line.ts';
import { cornerMark, mapCasting } from './map-casting.ts';
import { type LaidZone, linePitch, type MapLayout, mapLayout } from './map-layout.ts';
import { mapRows } from './map-rows.ts';
import { mapSection } from './map-section.ts';
import { asHeading, wordLine } from './map-words.ts';
import { type ZoneFace, zoneFace, zoneGroup, zoneWords } from './map-zone.ts';
import { palette } from './palette.ts';
import type { Shape } from './shape.ts';

/** Numbers of the zones by pad; zone 0 is at the minus end of the travel. */
export type ByPad = Readonly<Record<string, readonly number[]>>;

/** What a map shows in its zones. */
export type MapShow =
  | { readonly kind: 'passes'; readonly passes: ByPad }
  | { readonly kind: 'pass'; readonly pass: number; readonly passes: ByPad }
  /** Bearing share 0 to 1. Spots are fixed by zone and round. */
  | { readonly kind: 'blue'; readonly share: ByPad; readonly round: number }
  /** Figures as written, shaded by their size. */
  | {
      readonly kind: 'heights';
      readonly values: ByPad;
      readonly texts: Readonly<Record<string, readonly string[]>>;
    }
  | {
      readonly kind: 'words';
      readonly words: Readonly<Record<string, readonly (BlueWord | undefined)[]>>;
      readonly round: number;
      /** The blue the words are said of, share 0 to 1: a practice machine's, or a photo's. */
      readonly seen?: ByPad;
    };

export interface ScrapeMapFigure {
  readonly title: string;
  readonly slide: Slide;
  readonly places: PlaceWords;
  readonly turnedOver: TurnedOver;
  /** px; 358 on a phone. From 560 on it is drawn for arm's length. The natural width may come out larger. */
  readonly width: number;
  readonly show: MapShow;
  /** The zone that is being entered. */
  readonly chosen?: { readonly pad: string; readonly zone: number };
}

/** The underside drawn as the part lies on the bench, with what to do in each zone, and the corner to find first. */
export function scrapeMap(figure: ScrapeMapFigure): Shape {
  const { slide, places, turnedOver } = figure;
  const side = onBench(slide, turnedOver);
  const words = benchWords(side, places);
  const rows = mapRows(slide, side);
  const layout = mapLayout(rows, words, figure.width);
  const zones = layout.rows.flatMap((row) => row.zones);
  return drawing(
    {
      title: figure.title,
      desc: describe(figure, words),
      width: layout.width,
      height: layout.height,
    },
    mapSection(layout),
    mapCasting(layout),
    zones.map((zone) => drawnZone(zone, figure, layout)),
    wordsRound(layout),
    cornerMark(layout, words),
  );
}

/** What stands in one zone; a pad the values do not name counts 0 passes, no blue, no figure. */
export function faceOfZone(show: MapShow, pad: string, zone: number): ZoneFace {
  switch (show.kind) {
    case 'passes':
      return { kind: 'passes', passes: show.passes[pad]?.[zone] ?? 0 };
    case 'pass':
      return { kind: 'pass', pass: show.pass, passes: show.passes[pad]?.[zone] ?? 0 };
    case 'blue':
      return { kind: 'blue', share: show.share[pad]?.[zone] ?? 0, seed: `${pad} ${zone} ${show.round}` };
    case 'heights': {
      const largest = Math.max(...Object.values(show.values).flat().map(Math.abs), 1e-9);
      return {
        kind: 'figure',
        text: show.texts[pad]?.[zone] ?? '',
        shade: Math.abs(show.values[pad]?.[zone] ?? 0) / largest,
      };
    }
    case 'words': {
      const seen = show.seen?.[pad]?.[zone];
      return {
        kind: 'word',
        word: show.words[pad]?.[zone],
        seed: `${pad} ${zone} ${show.round}`,
        ...(seen === undefined ? {} : { seen }),
      };
    }
  }
}

function drawnZone(laid: LaidZone, figure: ScrapeMapFigure, layout: MapLayout): Shape {
  const { box, touch, zone } = laid;
  const pad = laid.lying.pad.name;
  const face = faceOfZone(figure.show, pad, zone);
  const isChosen = figure.chosen?.pad === pad && figure.chosen.zone === zone;
  return zoneGroup(
    { 'data-pad': pad, 'data-zone': zone },
    `${asHeading(pad)}, zone ${zone + 1} of ${laid.lying.pad.zones} from the ${figure.places.minus_end}: ${zoneWords(face)}`,
    rectangle(touch.x, touch.y, touch.width, touch.height, 'none', { 'pointer-events': 'all' }),
    ...zoneFace(face, box, layout.style),
    ...(isChosen
      ? [
          rectangle(box.x, box.y, box.width, box.height, 'none', {
            stroke: palette.ink,
            'stroke-width': 4,
          }),
        ]
      : []),
  );
}

/** Words over and under the casting, and the names of the rows: on the strip or in the notch above their zones. */
function wordsRound(layout: MapLayout): Shape[] {
  const { casting, style, rows } = layout;
  const { label: size } = style;
  const left = casting.x + 8;
  const right = casting.x + casting.width - (layout.isSectionBeside ? 2 : 8);
  const pitch = linePitch(style);
  const lift = (lines: readonly unknown[], k: number): number => (lines.length - 1 - k) * pitch;
  return [
    ...layout.above.flatMap((line, k) =>
      wordLine(line, left, right, casting.y - 9 - lift(layout.above, k), size),
    ),
    ...rows.slice(1).flatMap((laid) => {
      const foot = laid.top - (laid.row.joint === 'new bar' ? Math.max(style.border, 6) + 9 : 8);
      return laid.nameLines.flatMap((line, k) =>
        wordLine(line, left, right, foot - lift(laid.nameLines, k), size),
      );
    }),
    ...layout.below.flatMap((line, k) =>
      wordLine(line, left, right, casting.y + casting.height + size + 8 + k * pitch, size),
    ),
  ];
}

/** The same map as text: each pad's zones from the minus end. */
function describe(figure: ScrapeMapFigure, words: BenchWords): string {
  const { corner } = words;
  const lines = figure.slide.pads.map((pad) => {
    const zones = Array.from({ length: pad.zones }, (_, zone) =>
      zoneWords(faceOfZone(figure.show, pad.name, zone)),
    );
    return `${asHeading(pad.name)}, from the ${corner.end}: ${zones.join('; ')}.`;
  });
  return [
    `Turned ${figure.turnedOver}: the corner at the ${corner.end}, ${corner.side}, lies ${corner.edge} ${corner.at}.`,
    ...lines,
  ].join(' ');
}
