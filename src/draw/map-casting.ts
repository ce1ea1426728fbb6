import type { BenchWords } from './bench-side.ts';
import { group } from './drawing.ts';
import { boxCorners } from './hatch.ts';
import { chamfered, line, pathThrough, rectangle, type Spot } from './line.ts';
import type { LaidRow, MapLayout } from './map-layout.ts';
import { asHeading } from './map-words.ts';
import { palette } from './palette.ts';
import { type Shape, shape } from './shape.ts';
import { textWidth } from './text.ts';

/** The underside of the casting: bars that carry the rows, joined by a neck; the root of a V is a double line. */
export function mapCasting(layout: MapLayout): Shape[] {
  const { casting, rows } = layout;
  const border = Math.max(layout.style.border, 6);
  const breaks = rows
    .map((laid, i) => ({ laid, before: rows[i - 1] }))
    .filter(({ laid }) => laid.row.joint === 'new bar')
    .map(({ laid, before }) => ({
      top: before!.bottom + border,
      bottom: laid.top - border,
      words: Math.max(
        ...laid.names.map((name) => textWidth(asHeading(name.lying.pad.name), layout.style.label)),
      ),
    }));
  const bars = [...breaks.map((gap) => gap.top), casting.y + casting.height].map((bottom, i) => ({
    top: i ? breaks[i - 1]!.bottom : casting.y,
    bottom,
  }));
  const corners = bars.map(({ top, bottom }) =>
    chamfered(
      boxCorners(casting.x, top, casting.width, bottom - top),
      Array<number>(4).fill(layout.style.chamfer),
    ),
  );
  const necks = breaks.map((gap) => {
    const notch = Math.min(Math.max(casting.width * 0.24, gap.words + 20), casting.width * 0.42);
    const from = casting.x + notch;
    const to = casting.x + casting.width * 0.76;
    return { ...gap, from, to };
  });
  const fill = { fill: palette.steel };
  const edge = { fill: 'none', stroke: palette.ink, 'stroke-width': 1.7 };
  return [
    ...corners.map((bar) => shape('path', { d: pathThrough(bar, true), ...fill, ...strokeOf(edge) })),
    ...necks.map((neck) => neckShape(neck.from, neck.to, neck.top, neck.bottom)),
    ...rows.flatMap((laid) => (laid.row.meetsBefore ? rootLines(laid, layout) : [])),
  ];
}

const strokeOf = (edge: { stroke: string; 'stroke-width': number }) => ({
  stroke: edge.stroke,
  'stroke-width': edge['stroke-width'],
});

/** The neck between two bars, its inner corners rounded like a casting's. */
function neckShape(from: number, to: number, top: number, bottom: number): Shape {
  const r = Math.min(10, (bottom - top) / 2);
  const side = (x: number, turn: number): string =>
    `M${x - turn * r} ${top}Q${x} ${top} ${x} ${top + r}V${bottom - r}Q${x} ${bottom} ${x - turn * r} ${bottom}`;
  return group(
    {},
    rectangle(from, top - 1, to - from, bottom - top + 2, palette.steel),
    shape('path', {
      d: side(from, 1) + side(to, -1),
      fill: 'none',
      stroke: palette.ink,
      'stroke-width': 1.7,
    }),
  );
}

function rootLines(laid: LaidRow, layout: MapLayout): Shape[] {
  const y = laid.top - layout.style.strip / 2;
  const name = laid.names[0]!;
  const from = name.x + textWidth(asHeading(name.lying.pad.name), layout.style.label) + 14;
  const to = layout.casting.x + layout.casting.width - layout.style.border;
  if (to - from < 20) return [];
  return [y - 2.5, y + 2.5].map((at) => line([from, at], [to, at], palette.edge, 1.4));
}

/** The corner to find first: a bracket round it and a ringed dot on it, as a shop marks it with a punch. */
export function cornerMark(layout: MapLayout, words: BenchWords): Shape {
  const { casting } = layout;
  const isRight = words.corner.at === 'right';
  const isNear = words.corner.edge === 'near';
  const isNarrow = !layout.isSectionBeside;
  const inset = isNarrow ? 9 : 0;
  const x = isRight ? casting.x + casting.width - inset : casting.x + inset;
  const y = isNear ? casting.y + casting.height : casting.y;
  const outX = isRight ? 1 : -1;
  const outY = isNear ? 1 : -1;
  const arm = 32;
  const off = 4;
  // A narrow map fills its breadth, so the bracket's upright arm stands on the casting's edge.
  const upright = isNarrow ? x + outX * (inset - 2) : x + outX * off;
  const bracket: Spot[] = [
    [x - outX * arm, y + outY * off],
    [upright, y + outY * off],
    [upright, y - outY * arm],
  ];
  return group(
    {},
    shape('path', { d: pathThrough(bracket), fill: 'none', stroke: palette.ink, 'stroke-width': 5 }),
    shape('circle', { cx: x, cy: y, r: 8.5, fill: palette.sheet, stroke: palette.ink, 'stroke-width': 2 }),
    shape('circle', { cx: x, cy: y, r: 3.2, fill: palette.ink }),
  );
}
