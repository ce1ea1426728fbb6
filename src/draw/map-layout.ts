import type { BenchWords } from './bench-side.ts';
import { linear } from './gauge-scale.ts';
import type { LyingPad, MapRow } from './map-rows.ts';
import { nameLines, type Span, type WordLine, wordsAbove, wordsBelow } from './map-words.ts';

/** A rectangle of the drawing, px. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Sizes that differ between thumb and arm's length, px. */
export interface MapStyle {
  readonly figure: number;
  readonly label: number;
  readonly step: number;
  readonly zoneHeight: number;
  readonly section: number;
  /** From casting edge to zones. */
  readonly border: number;
  readonly strip: number;
  readonly notch: number;
  readonly chamfer: number;
}

export const leastZone = 48;
const cornerRoom = 11;

export const phone: MapStyle = {
  figure: 25,
  label: 14.5,
  step: 11,
  zoneHeight: 52,
  section: 27,
  border: 8,
  strip: 26,
  notch: 44,
  chamfer: 8,
};
const tablet: MapStyle = {
  figure: 40,
  label: 17,
  step: 16,
  zoneHeight: 90,
  section: 48,
  border: 10,
  strip: 31,
  notch: 62,
  chamfer: 10,
};

export interface LaidZone {
  readonly lying: LyingPad;
  readonly zone: number;
  /** What is drawn, and what a thumb may hit. */
  readonly box: Box;
  readonly touch: Box;
}

export interface LaidRow {
  readonly row: MapRow;
  readonly top: number;
  readonly bottom: number;
  readonly zones: readonly LaidZone[];
  /** Where each pad's name may stand, and the names broken to it. */
  readonly names: readonly Span[];
  readonly nameLines: readonly (readonly WordLine[])[];
}

export interface MapLayout {
  readonly style: MapStyle;
  /** Natural size of the whole drawing. */
  readonly width: number;
  readonly height: number;
  readonly casting: Box;
  readonly rows: readonly LaidRow[];
  /** The section's strip: beside the rows, or above them when the zones need the whole breadth. */
  readonly section: Box;
  readonly isSectionBeside: boolean;
  /** Words over and under the casting, line by line. */
  readonly above: readonly (readonly WordLine[])[];
  readonly below: readonly (readonly WordLine[])[];
}

/** From one line of words to the next, px. */
export const linePitch = (style: MapStyle): number => Math.round(style.label * 1.25);

/**
 * Where everything of a map stands. Zones are to scale along the travel, stretches without any pad are shortened, pads are drawn
 * equally broad; a zone is never narrower than a thumb, so a part with many zones asks for more width than it was given.
 */
export function mapLayout(rows: readonly MapRow[], words: BenchWords, asked: number): MapLayout {
  const style = asked >= 560 ? tablet : phone;
  const needed = leastZone / narrowestShare(rows);
  const beside = style.section + 7;
  const isSectionBeside = needed <= asked - beside - cornerRoom - 2 * style.border;
  const border = isSectionBeside ? style.border : 2;
  const left = isSectionBeside ? beside : 1;
  const rightRoom = isSectionBeside ? cornerRoom : 1;
  const inner = Math.max(needed, asked - left - rightRoom - 2 * border);
  const width = inner + left + rightRoom + 2 * border;
  const sectionTall = isSectionBeside ? 0 : style.section + 46;
  const place = travelScale(rows, [left + border, left + border + inner]);
  const outer = inner + 2 * border;
  const spans = rows.map((row) => row.pads.map((lying) => spanOf(lying, place)));
  const above = wordsAbove(rows[0]!, words, style.label, outer - 8, spans[0]!);
  const below = wordsBelow(words, style.label, outer - 8);
  const topWords = above.length * linePitch(style) + 7;

  const castingTop = sectionTall + topWords;
  let y = castingTop + Math.max(border, 6);
  const laid = rows.map((row, i): LaidRow => {
    const names = spans[i]!;
    const lines = nameLines(names, style.label);
    if (row.joint === 'same bar') y += style.strip + (lines.length - 1) * linePitch(style);
    if (row.joint === 'new bar') y += style.notch + 2 * Math.max(border, 6);
    const top = y;
    y += style.zoneHeight;
    return {
      row,
      top,
      bottom: y,
      zones: row.pads.flatMap((lying) => zonesIn(lying, place, top, style.zoneHeight)),
      names,
      nameLines: lines,
    };
  });
  const castingBottom = y + Math.max(border, 6);
  const casting = { x: left, y: castingTop, width: outer, height: castingBottom - castingTop };
  const section = isSectionBeside
    ? { x: 1, y: castingTop, width: style.section, height: casting.height }
    : { x: 1, y: 1, width: width - 2, height: style.section };
  return {
    style,
    width,
    height: castingBottom + 12 + below.length * linePitch(style),
    casting,
    rows: laid,
    section,
    isSectionBeside,
    above,
    below,
  };
}

const spanOf = (lying: LyingPad, place: (mm: number) => number): Span => {
  const x = place(lying.left_mm);
  return { lying, x, width: place(lying.right_mm) - x };
};

function zonesIn(lying: LyingPad, place: (mm: number) => number, top: number, height: number): LaidZone[] {
  const from = place(lying.left_mm);
  const pitch = (place(lying.right_mm) - from) / lying.zones.length;
  return lying.zones.map((zone, i) => ({
    lying,
    zone,
    box: { x: from + i * pitch + 1.5, y: top, width: pitch - 3, height },
    touch: { x: from + i * pitch, y: top - 1, width: pitch, height: height + 2 },
  }));
}

interface Knots {
  readonly mm: readonly number[];
  /** Place of each, in mm with the empty stretches shortened. */
  readonly drawn: readonly number[];
}

/** Stretches along the travel: those that any pad covers stay to scale, those between are kept to a few hundredths of the whole. */
function travelKnots(rows: readonly MapRow[]): Knots {
  const pads = rows.flatMap((row) => row.pads);
  const mm = [...new Set(pads.flatMap((pad) => [pad.left_mm, pad.right_mm]))].sort((a, b) => a - b);
  const covered = (from: number, to: number): boolean =>
    pads.some((pad) => pad.left_mm < to - 1e-9 && pad.right_mm > from + 1e-9);
  const whole = mm.at(-1)! - mm[0]!;
  const drawn = [0];
  for (let i = 1; i < mm.length; i++) {
    const run = mm[i]! - mm[i - 1]!;
    drawn.push(drawn[i - 1]! + (covered(mm[i - 1]!, mm[i]!) ? run : Math.min(run, whole * 0.05)));
  }
  return { mm, drawn };
}

/** Places along the travel on the drawing, px: to scale where any pad lies. */
export function travelScale(
  rows: readonly MapRow[],
  range: readonly [number, number],
): (mm: number) => number {
  const { mm, drawn } = travelKnots(rows);
  const toPx = linear([drawn[0]!, drawn.at(-1)!], range);
  return (at) => {
    const i = Math.min(
      Math.max(
        mm.findIndex((knot) => knot >= at - 1e-9),
        1,
      ),
      mm.length - 1,
    );
    return toPx(linear([mm[i - 1]!, mm[i]!], [drawn[i - 1]!, drawn[i]!])(at));
  };
}

/** The narrowest zone's share of the drawn breadth. */
function narrowestShare(rows: readonly MapRow[]): number {
  const place = travelScale(rows, [0, 1]);
  return Math.min(
    ...rows.flatMap((row) =>
      row.pads.map((pad) => (place(pad.right_mm) - place(pad.left_mm)) / pad.zones.length),
    ),
  );
}
