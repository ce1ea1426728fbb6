import { localSuffix } from '../core/chart/chart.ts';
import { chartHead, chartWidth } from './chart-row.ts';
import { chartBlocks, factLines, paragraph } from './chart-sheet.ts';
import type { ChartTold, Made, PaperPhoto, ChartPiece as Piece, PrintDrawn } from './chart-told.ts';
import { palette } from './palette.ts';
import { scrapeMap } from './scrape-map.ts';
import type { Shape } from './shape.ts';

const drawn = (drawing: Shape, more: { keep?: true; head?: Shape; above?: number } = {}): Piece => ({
  kind: 'drawing',
  drawing,
  ...more,
});
const body = { size: 15 };
const quiet = { size: 14, fill: palette.ink2 };
const heading = (words: string): Piece =>
  drawn(paragraph(words, { size: 20, weight: 640 }), { keep: true, above: 22 });
const words = (texts: readonly string[], lettering: object = body): Piece[] =>
  texts.map((text) => drawn(paragraph(text, lettering), { above: 4 }));

/** A part of the report with its heading; nothing at all when there is nothing to say. */
const section = (title: string, pieces: readonly Piece[]): Piece[] =>
  pieces.length ? [heading(title), ...pieces] : [];

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

function printMap(report: ChartTold, print: PrintDrawn, when: string): Piece[] {
  if (!report.slide) return [];
  const map = scrapeMap({
    title: `Print ${when}, round ${print.round}`,
    ...report.slide,
    width: 700,
    show: { kind: 'blue', share: print.share, round: print.round },
  });
  return [
    drawn(paragraph(`Print ${when} (round ${print.round}): ${print.text}.`, { ...body, weight: 560 }), {
      keep: true,
      above: 10,
    }),
    drawn(map, { above: 6 }),
  ];
}

function jobPieces(report: ChartTold): Piece[] {
  const { job } = report;
  if (!job) return section('What was done', words(report.done));
  const rounds = job.rounds.flatMap((round) => [
    drawn(
      paragraph(`Round ${round.round}${round.on === undefined ? '' : `, ${round.on}`}`, {
        ...body,
        weight: 640,
      }),
      { keep: true, above: 8 },
    ),
    ...words([
      `Found: ${round.found.join('; ')}.`,
      ...(round.scraped === undefined ? [] : [`Then scraped: ${round.scraped}.`]),
    ]),
  ]);
  return [
    ...section('What was done', [
      ...words(report.done),
      ...rounds,
      ...words(job.removal.map((one) => `A pass took, as this job learned: ${one}.`)),
    ]),
    ...section('Prints', [
      ...(job.before ? printMap(report, job.before, 'before') : []),
      ...(job.after ? printMap(report, job.after, 'after') : []),
      // Nothing was printed on this bench, nothing is told of it.
      ...(job.rounds.length > 0 ? words([job.bearing]) : []),
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
    ...words((report.job?.setups ?? []).map((one) => `${one.name}: ${one.text}`)),
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
            `${line.number}. ${line.how}${line.direction ? ` Permitted: ${line.direction.allowed}, because ${line.direction.reason}.` : ''} Limit ${line.source_text}.`,
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
      ...jobPieces(report),
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
      ...section('Cautions', words([...report.cautions, ...(report.job?.cautions ?? [])])),
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
