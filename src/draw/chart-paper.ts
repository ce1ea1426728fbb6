import { localSuffix } from '../core/chart/chart.ts';
import { benchPieces, cautionsTold, setupsTold } from './chart-paper-benches.ts';
import { chartHead, chartWidth } from './chart-row.ts';
import { chartBlocks, factLines, paragraph } from './chart-sheet.ts';
import type { ChartTold, Made, PaperPhoto, ChartPiece as Piece } from './chart-told.ts';
import { palette } from './palette.ts';
import { drawn, heading, quiet, section, words } from './paper-words.ts';
import type { Shape } from './shape.ts';

function lines(report: ChartTold): Piece[] {
  const head = chartHead();
  return [
    drawn(head, { keep: true, above: 16 }),
    ...chartBlocks(report.groups).flatMap(({ head: name, rows }) => [
      drawn(name, { keep: true, head, above: 8 }),
      ...rows.map((row) => drawn(row, { head })),
    ]),
  ];
}

function measuredWith(report: ChartTold): Piece[] {
  const all = report.groups.flatMap((group) => group.lines);
  const told = new Map<string, number[]>();
  for (const line of all)
    for (const one of new Set([line.first_with, line.now_with]))
      if (one !== undefined) told.set(one, [...(told.get(one) ?? []), line.number]);
  return section('What it was measured with', [
    ...words(setupsTold(report)),
    ...words(
      [...told].map(
        ([one, numbers]) => `${one}: line${numbers.length > 1 ? 's' : ''} ${numbers.join(', ')}.`,
      ),
    ),
  ]);
}

function hows(report: ChartTold): Piece[] {
  const all = report.groups.flatMap((group) => group.lines);
  return section(
    'The lines in words',
    // A local limit is measured as the line before it.
    all
      .filter((line) => !line.id.endsWith(localSuffix))
      .map((line) =>
        drawn(
          paragraph(
            `${line.number}. ${line.how}${line.direction ? ` Permitted: ${line.direction.allowed}, because ${line.direction.reason}.` : ''} Limit ${line.source_text}.${line.bench ? ` Measured: ${line.bench.text}.` : ''}`,
            quiet,
          ),
          { above: 4 },
        ),
      ),
  );
}

/** What settles each line that was measured, then in one breath those that were not. */
function remaining(report: ChartTold): string[] {
  const time = (minutes: number | undefined): string =>
    minutes === undefined ? '' : `, about ${minutes} min`;
  const open = report.remaining.filter((one) => one.measured);
  const bare = report.remaining.filter((one) => !one.measured);
  return [
    ...(report.next === undefined ? [] : [report.next]),
    ...open.map((one) => `${one.number}. ${one.name}: ${one.text}${time(one.minutes)}.`),
    ...(bare.length
      ? [
          `Not measured yet: ${bare.map((one) => `${one.number}. ${one.name}${time(one.minutes)}`).join('; ')}.`,
        ]
      : []),
  ];
}

/** A chart as a document that a customer keeps. */
export function chartPaper(
  report: ChartTold,
  made: Made,
  photos: readonly PaperPhoto[] = [],
): {
  readonly title: string;
  readonly foot: string;
  readonly width: number;
  readonly made: string;
  readonly pieces: readonly Piece[];
} {
  const title = `Acceptance chart: ${report.title}`;
  return {
    title,
    foot: [
      report.title,
      ...(report.note === undefined ? [] : [report.note]),
      made.day,
      'each ± holds 19 times in 20',
    ].join(' · '),
    width: chartWidth,
    made: made.at,
    pieces: [
      drawn(paragraph('Acceptance chart', { size: 34, weight: 680 })),
      drawn(paragraph(report.title, { size: 22, weight: 560 })),
      ...(report.note === undefined ? [] : [drawn(paragraph(report.note, quiet))]),
      drawn(factLines(report.facts), { above: 10 }),
      drawn(paragraph(report.sentence, { size: 18 }), { above: 10 }),
      ...lines(report),
      ...words(report.rules, quiet),
      ...section('Still to be proven', words(remaining(report))),
      ...section('Condition found', words(report.condition)),
      ...benchPieces(report),
      ...(photos.length ? [heading('Photos of the prints'), { kind: 'photos' as const, photos }] : []),
      ...measuredWith(report),
      ...hows(report),
      ...section('Where the limits come from', [
        ...words(report.scaling === undefined ? [] : [report.scaling], quiet),
        ...words(
          report.left_out.map((one) => `Left out: ${one}.`),
          quiet,
        ),
      ]),
      ...section('Cautions', words(cautionsTold(report))),
      drawn(signatures(), { above: 34 }),
    ],
  };
}

/** Two lines to sign on. */
function signatures(): Shape {
  const sheet = paragraph('', {});
  const half = chartWidth / 2 - 20;
  const rule = (x: number): Shape => ({
    tag: 'line',
    attributes: { x1: x, y1: 30, x2: x + half, y2: 30, stroke: palette.ink, 'stroke-width': 1 },
    children: [],
  });
  const label = (x: number, text: string): Shape => ({
    tag: 'text',
    attributes: { x, y: 48, 'font-size': 14, 'font-weight': 450, fill: palette.ink2 },
    children: [text],
  });
  return {
    ...sheet,
    attributes: { ...sheet.attributes, width: chartWidth, height: 56, viewBox: `0 0 ${chartWidth} 56` },
    children: [
      rule(0),
      rule(half + 40),
      label(0, 'Scraped and measured by, date'),
      label(half + 40, 'Seen by the owner, date'),
    ],
  };
}
