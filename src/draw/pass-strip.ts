import type { Slide } from '../core/body/slide.ts';
import type { TurnedOver } from '../core/ledger/entry.ts';
import { onBench } from './bench-side.ts';
import { drawing, group } from './drawing.ts';
import { boxCorners, hatch } from './hatch.ts';
import { line, rectangle } from './line.ts';
import { travelScale } from './map-layout.ts';
import { type MapRow, mapRows } from './map-rows.ts';
import { strokeAngle } from './map-zone.ts';
import { palette } from './palette.ts';
import type { ByPad } from './scrape-map.ts';
import { type Shape, shape } from './shape.ts';
import { label, textWidth } from './text.ts';

export interface PassStripFigure {
  readonly title: string;
  readonly desc?: string;
  readonly slide: Slide;
  readonly turnedOver: TurnedOver;
  readonly passes: ByPad;
  /** The pass that is next or being made, from 1; those before it are done. */
  readonly now?: number;
  readonly width: number;
}

const gap = 18;
const zoneTall = 18;
const leastPanel = 150;

/** The passes one by one, small: which zones each takes, its strokes' direction, and how many zones. */
export function passStrip(figure: PassStripFigure): Shape {
  const { slide, turnedOver, passes, width } = figure;
  const rows = mapRows(slide, onBench(slide, turnedOver));
  const count = Math.max(0, ...Object.values(passes).flat());
  const perLine = Math.max(1, Math.min(count, Math.floor((width + gap) / (leastPanel + gap))));
  const panel = (width - gap * (perLine - 1)) / perLine;
  const tall = 40 + rows.length * (zoneTall + 4) + 12;
  const lines = Math.ceil(count / perLine);
  return drawing(
    { ...figure, height: Math.max(lines * tall, 1) },
    Array.from({ length: count }, (_, i) =>
      onePass(figure, rows, i + 1, {
        x: (i % perLine) * (panel + gap),
        y: Math.floor(i / perLine) * tall,
        width: panel,
      }),
    ),
  );
}

function onePass(
  figure: PassStripFigure,
  rows: readonly MapRow[],
  pass: number,
  at: { readonly x: number; readonly y: number; readonly width: number },
): Shape {
  const isNow = pass === (figure.now ?? 1);
  const isDone = pass < (figure.now ?? 1);
  const zones = rows.flatMap((row) =>
    row.pads.flatMap((lying) =>
      lying.zones.filter((zone) => (figure.passes[lying.pad.name]?.[zone] ?? 0) >= pass),
    ),
  ).length;
  const ink = isNow ? palette.ink : palette.ink2;
  const counted = isDone ? 'done' : `${zones} ${zones === 1 ? 'zone' : 'zones'}`;
  const lettering = { size: 15, fill: ink };
  const name = `pass ${pass}`;
  return group(
    {},
    line([at.x, at.y + 1.5], [at.x + at.width, at.y + 1.5], isNow ? palette.ink : palette.line, 3),
    shape('path', {
      d: strokesAt(at.x + 2, at.y + 12, strokeAngle(pass)),
      stroke: ink,
      'stroke-width': 2,
      fill: 'none',
    }),
    label(at.x + 30, at.y + 26, name, { ...lettering, weight: 660 }),
    30 + textWidth(name, 15) + textWidth(counted, 15) + 8 < at.width
      ? [label(at.x + at.width, at.y + 26, counted, { ...lettering, weight: 480, anchor: 'end' })]
      : [],
    smallMap(figure, rows, pass, { ...at, y: at.y + 38 }, isNow),
  );
}

const strokesAt = (x: number, y: number, angle: 45 | -45): string =>
  [0, 7, 14].map((off) => (angle === 45 ? `M${x + off} ${y + 14}l6 -14` : `M${x + off} ${y}l6 14`)).join('');

function smallMap(
  figure: PassStripFigure,
  rows: readonly MapRow[],
  pass: number,
  at: { readonly x: number; readonly y: number; readonly width: number },
  isNow: boolean,
): Shape[] {
  const place = travelScale(rows, [at.x, at.x + at.width]);
  let y = at.y;
  return rows.flatMap((row) => {
    if (row.joint === 'new bar') y += 6;
    const top = y;
    y += zoneTall + 4;
    return row.pads.flatMap((lying) => {
      const from = place(lying.left_mm);
      const pitch = (place(lying.right_mm) - from) / lying.zones.length;
      return lying.zones.flatMap((zone, i) => {
        const isLit = (figure.passes[lying.pad.name]?.[zone] ?? 0) >= pass;
        const box = { x: from + i * pitch + 1, width: pitch - 2 };
        const corners = boxCorners(box.x, top, box.width, zoneTall);
        if (!isLit)
          return [
            rectangle(box.x + 0.5, top + 0.5, box.width - 1, zoneTall - 1, 'none', {
              stroke: palette.line,
              'stroke-width': 1,
            }),
          ];
        return [
          rectangle(box.x, top, box.width, zoneTall, palette.sheet),
          shape('path', {
            d: hatch(corners, strokeAngle(pass), 5),
            stroke: palette.ink2,
            'stroke-width': 1.1,
            fill: 'none',
          }),
          rectangle(box.x + 0.75, top + 0.75, box.width - 1.5, zoneTall - 1.5, 'none', {
            stroke: isNow ? palette.ink : palette.edge,
            'stroke-width': 1.5,
          }),
        ];
      });
    });
  });
}
