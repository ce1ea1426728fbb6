import type { BlueWord } from '../core/ledger/entry.ts';
import { group } from './drawing.ts';
import { boxCorners, hatch } from './hatch.ts';
import { rectangle } from './line.ts';
import type { Box, MapStyle } from './map-layout.ts';
import { leastText, palette } from './palette.ts';
import { type Shape, shape } from './shape.ts';
import { bearingSpots, seedOf, spotsPath } from './spots.ts';
import { label, textWidth } from './text.ts';

/** What stands in one zone of a map. */
export type ZoneFace =
  | { readonly kind: 'passes'; readonly passes: number }
  /** During a pass: lit with that pass's strokes, or done, or not to be touched. */
  | { readonly kind: 'pass'; readonly pass: number; readonly passes: number }
  | { readonly kind: 'blue'; readonly share: number; readonly seed: string }
  /** A figure on a ground shaded by `shade`, 0 to 1. */
  | { readonly kind: 'figure'; readonly text: string; readonly shade: number }
  /** `seen`: the blue itself, share 0 to 1, under the word that is said of it. */
  | {
      readonly kind: 'word';
      readonly word: BlueWord | undefined;
      readonly seed: string;
      readonly seen?: number;
    };

/** Directions of the strokes and their shifts, share of a step: one layer a pass; from the fifth on in quarter steps. */
const layers: readonly (readonly [angle_deg: number, shift: number])[] = [
  [45, 0],
  [-45, 0],
  [45, 0.5],
  [-45, 0.5],
  [45, 0.25],
  [-45, 0.25],
  [45, 0.75],
  [-45, 0.75],
];

/** The strokes of pass k (from 1) turn each pass, as they do on the metal. */
export const strokeAngle = (pass: number): 45 | -45 => (pass % 2 === 1 ? 45 : -45);

const strokes = (box: Box, angle_deg: number, shift: number, step: number): string =>
  hatch(boxCorners(box.x, box.y, box.width, box.height), angle_deg, step, shift);

const strokeLook = (style: MapStyle, width = style.step / 7.5) => ({
  fill: 'none',
  stroke: palette.ink2,
  'stroke-width': width,
});

/** The zone as drawn. */
export function zoneFace(face: ZoneFace, box: Box, style: MapStyle): Shape[] {
  switch (face.kind) {
    case 'passes':
      return face.passes <= 0 ? untouched(box, style) : planned(face.passes, box, style);
    case 'pass':
      if (face.passes >= face.pass) return lit(face.pass, box, style);
      return face.passes > 0 ? quiet('done', box, style) : untouched(box, style);
    case 'blue': {
      const text = `${Math.round(face.share * 100)}`;
      return [
        ground(box),
        ...blue(box, face.share, face.seed),
        ...plated(text, box, style, style.figure * 0.86),
      ];
    }
    case 'figure':
      return [
        ground(box),
        rectangle(box.x, box.y, box.width, box.height, palette.ink, {
          'fill-opacity': Math.min(Math.max(face.shade, 0), 1) * 0.2,
        }),
        figure(face.text, box, fitted(face.text, box, style.figure * 0.9), 680, palette.ink),
      ];
    case 'word':
      return face.seen === undefined
        ? worded(face.word, face.seed, box, style)
        : seen(face.seen, face.word, face.seed, box, style);
  }
}

const ground = (box: Box): Shape => rectangle(box.x, box.y, box.width, box.height, palette.sheet);

const dotted = (box: Box): Shape =>
  rectangle(box.x + 0.6, box.y + 0.6, box.width - 1.2, box.height - 1.2, 'none', {
    stroke: palette.edge,
    'stroke-width': 1.2,
    'stroke-dasharray': '2 4',
  });

function planned(passes: number, box: Box, style: MapStyle): Shape[] {
  const d = layers
    .slice(0, Math.min(passes, layers.length))
    .map(([angle_deg, shift]) => strokes(box, angle_deg, shift, style.step))
    .join('');
  return [
    ground(box),
    shape('path', { d, ...strokeLook(style) }),
    ...plated(`${passes}`, box, style, style.figure),
  ];
}

const untouched = (box: Box, style: MapStyle): Shape[] => [
  ground(box),
  dotted(box),
  figure('0', box, style.figure * 0.9, 480, palette.ink2),
];

const quiet = (word: string, box: Box, style: MapStyle): Shape[] => [
  rectangle(box.x, box.y, box.width, box.height, palette.paper),
  dotted(box),
  figure(word, box, style.label, 480, palette.ink2),
];

function lit(pass: number, box: Box, style: MapStyle): Shape[] {
  return [
    ground(box),
    shape('path', {
      d: strokes(box, strokeAngle(pass), 0, style.step * 0.85),
      ...strokeLook(style, style.step / 5.5),
    }),
    rectangle(box.x + 1.25, box.y + 1.25, box.width - 2.5, box.height - 2.5, 'none', {
      stroke: palette.ink,
      'stroke-width': 2.5,
    }),
  ];
}

/** Spots grow with the zone, so that their number does not. */
const spotSize = (box: Box): number => Math.sqrt(box.width * box.height) / 19;

const blue = (box: Box, share: number, seed: string): Shape[] => {
  const spots = bearingSpots(box, share, spotSize(box), seedOf(seed));
  return spots.length ? [shape('path', { d: spotsPath(spots), fill: palette.blue })] : [];
};

/** What a thumb has said of the blue. Burnished spots have a bare middle: rubbed through by hard contact. */
function worded(word: BlueWord | undefined, seed: string, box: Box, style: MapStyle): Shape[] {
  if (word === undefined) return quiet('tap', box, style);
  const share = { burnished: 0.85, heavy: 1, faint: 0.3, none: 0 }[word];
  const spots = bearingSpots(box, share, spotSize(box), seedOf(seed));
  const look =
    word === 'burnished'
      ? { fill: 'none', stroke: palette.blue, 'stroke-width': 1.5 }
      : { fill: palette.blue };
  return [
    ground(box),
    ...(spots.length ? [shape('path', { d: spotsPath(spots), ...look })] : [dotted(box)]),
    ...wordPlate(word, box, style),
  ];
}

function wordPlate(word: BlueWord, box: Box, style: MapStyle): Shape[] {
  const isBroken = word === 'burnished' && textWidth(word, style.label) > box.width - 6;
  const lines = isBroken ? ['bur-', 'nished'] : [word];
  return platedLines(lines, box, Math.max(style.label - (lines.length > 1 ? 0.5 : 0), leastText), 620);
}

/** The blue as it is seen, with no figure to it; and the word said of it, once there is one. */
function seen(share: number, word: BlueWord | undefined, seed: string, box: Box, style: MapStyle): Shape[] {
  const plate = word === undefined ? [] : wordPlate(word, box, style);
  return [ground(box), ...(share > 0 ? blue(box, share, seed) : []), dotted(box), ...plate];
}

/** A figure on a plate of sheet, over whatever the zone is filled with. */
const plated = (text: string, box: Box, style: MapStyle, size: number): Shape[] =>
  platedLines([text], box, fitted(text, box, size), style.figure > 30 ? 700 : 690);

function platedLines(lines: readonly string[], box: Box, size: number, weight: number): Shape[] {
  const width = Math.min(Math.max(...lines.map((words) => textWidth(words, size))) + size * 0.5, box.width);
  const pitch = size * 1.08;
  const height = pitch * (lines.length - 1) + size * 1.24;
  const x = box.x + (box.width - width) / 2;
  const y = box.y + (box.height - height) / 2;
  return [
    rectangle(x, y, width, height, palette.sheet, { rx: 3 }),
    ...lines.map((words, i) =>
      label(box.x + box.width / 2, y + size * 0.97 + i * pitch, words, { size, weight, anchor: 'middle' }),
    ),
  ];
}

const fitted = (text: string, box: Box, size: number): number =>
  Math.max(leastText, Math.min(size, (size * (box.width - 6)) / textWidth(text, size)));

const figure = (text: string, box: Box, size: number, weight: number, fill: string): Shape =>
  label(box.x + box.width / 2, box.y + box.height / 2 + size * 0.35, text, {
    size,
    weight,
    fill,
    anchor: 'middle',
  });

/** A zone's place in words, then what is in it: its accessible name. */
export function zoneWords(face: ZoneFace): string {
  switch (face.kind) {
    case 'passes':
      return face.passes === 1 ? '1 pass' : `${face.passes} passes`;
    case 'pass':
      if (face.passes >= face.pass) return `scrape, pass ${face.pass}`;
      return face.passes > 0 ? 'done' : '0 passes';
    case 'blue':
      return `${Math.round(face.share * 100)} % blue`;
    case 'figure':
      return face.text;
    case 'word':
      return [
        face.word ?? 'not tapped yet',
        ...(face.seen === undefined ? [] : [`${Math.round(face.seen * 100)} % blue is seen`]),
      ].join(', ');
  }
}

export const zoneGroup = (
  attributes: Record<string, string | number>,
  title: string,
  ...shapes: readonly Shape[]
): Shape => group(attributes, shape('title', {}, title), [...shapes]);
