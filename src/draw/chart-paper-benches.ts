import { plain, signed } from '../core/quantity/show.ts';
import { chartWidth } from './chart-row.ts';
import { paragraph } from './chart-sheet.ts';
import type {
  AccountTold,
  ChartTold,
  PartDrawn,
  ChartPiece as Piece,
  PrintDrawn,
  SlideTold,
  SweepDrawn,
} from './chart-told.ts';
import { drawing } from './drawing.ts';
import { body, drawn, section, words } from './paper-words.ts';
import { partsFace } from './parts-face.ts';
import { partsPlot } from './parts-plot.ts';
import { scrapeMap } from './scrape-map.ts';
import { type Shape, shape } from './shape.ts';
import { sweepPlot } from './sweep-plot.ts';

/** One bench of the report: its step's title, absent for a job about one slide only. */
interface Bench {
  readonly step?: string;
  readonly account: AccountTold;
  readonly slide?: SlideTold | undefined;
}

const isWorked = ({ account }: Bench): boolean => account.rounds.length > 0;

/** The benches that a report tells of: the job's own, then those that are jobs of their own. */
const benchesIn = ({ job, slide, step, benches }: ChartTold): Bench[] => [
  ...(job ? [{ account: job, slide, ...(step === undefined ? {} : { step }) }] : []),
  ...benches,
];

const bold = (text: string, above = 8): Piece =>
  drawn(paragraph(text, { ...body, weight: 640 }), { keep: true, above });

function printMap(slide: SlideTold, print: PrintDrawn, of: string, when: string): Piece[] {
  const title = `${of}Print ${when}`;
  const map = scrapeMap({
    title: `${title}, round ${print.round}`,
    ...slide,
    width: 700,
    show: { kind: 'blue', share: print.share, round: print.round },
  });
  return [
    drawn(paragraph(`${title} (round ${print.round}): ${print.text}.`, { ...body, weight: 560 }), {
      keep: true,
      above: 10,
    }),
    drawn(map, { above: 6 }),
  ];
}

const named = ({ step }: Bench): string => (step === undefined ? '' : `${step}: `);

function roundsOf(bench: Bench): Piece[] {
  const { account } = bench;
  return [
    ...account.rounds.flatMap((round) => [
      bold(`${named(bench)}Round ${round.round}${round.on === undefined ? '' : `, ${round.on}`}`),
      ...words([
        `Found: ${round.found.join('; ')}.`,
        ...(round.scraped === undefined ? [] : [`Then scraped: ${round.scraped}.`]),
      ]),
    ]),
    ...words(account.removal.map((one) => `A pass took, as this job learned: ${one}.`)),
  ];
}

function printsOf(bench: Bench): Piece[] {
  const { account, slide } = bench;
  const of = named(bench);
  return [
    ...(slide && account.before ? printMap(slide, account.before, of, 'before') : []),
    ...(slide && account.after ? printMap(slide, account.after, of, 'after') : []),
    ...words([`${of}${account.bearing}`]),
  ];
}

/** Figures side by side on one strip, each as it was drawn. */
function strip(title: string, figures: readonly Shape[]): Shape {
  const height = Math.max(...figures.map((figure) => Number(figure.attributes.height)));
  const placed = figures.map((figure, k) =>
    shape('svg', { ...figure.attributes, x: k * (chartWidth - half), y: 0 }, ...figure.children),
  );
  return drawing({ title, width: chartWidth, height }, placed);
}

/** Two figures stand beside each other with a gap between. */
const half = (chartWidth - 30) / 2;

const pairs = <T>(all: readonly T[]): T[][] =>
  Array.from({ length: Math.ceil(all.length / 2) }, (_, k) => all.slice(2 * k, 2 * k + 2));

const figureText = (value: number): string => signed(value, 4);

function sweepDrawn({ name, round, when, plot }: SweepDrawn): Shape {
  const { x_name, y_name, ...shown } = plot;
  return sweepPlot({
    title: `${name}, round ${round}`,
    width: half,
    ...shown,
    x: { name: `${x_name}; ${when}, round ${round}`, text: (at) => plain(at, 3) },
    y: { name: y_name, text: figureText },
  });
}

/** First and last sweep of each set-up, side by side. */
function sweepsOf(bench: Bench): Piece[] {
  const { sweeps } = bench.account;
  return [...new Set(sweeps.map((one) => one.name))].flatMap((name) => {
    const its = sweeps.filter((one) => one.name === name);
    const told = its.map((one) => `round ${one.round} ${one.when}`).join(', ');
    return [bold(`${named(bench)}${name}: ${told}`), drawn(strip(name, its.map(sweepDrawn)), { above: 4 })];
  });
}

function partDrawn(part: PartDrawn): Shape {
  if (part.kind === 'face') return partsFace({ ...part, width: half, words: part.title });
  const { title, places, value, doubt, planned, x, y_name } = part;
  return partsPlot({
    title,
    width: half,
    places_mm: places,
    value_um: value,
    doubt_um: doubt,
    ...(planned ? { fit_um: planned } : {}),
    words: planned ? `${title}; dashed: as planned` : title,
    x,
    y: { name: y_name, text: figureText },
  });
}

function partsOf(bench: Bench): Piece[] {
  const { parts } = bench.account;
  if (!parts) return [];
  return [
    ...(bench.step === undefined ? [] : [bold(bench.step)]),
    ...words(parts.texts),
    ...pairs(parts.drawn).map((two) => drawn(strip(two[0]!.title, two.map(partDrawn)), { above: 8 })),
  ];
}

/** What was done on every bench, round by round, and the prints before and after; nothing of a bench where nothing was measured. */
export function benchPieces(report: ChartTold): Piece[] {
  const benches = benchesIn(report).filter(isWorked);
  return [
    ...section('What was done', [...words(report.done), ...benches.flatMap(roundsOf)]),
    ...section('Sweeps, first and last', benches.flatMap(sweepsOf)),
    ...section('Prints', benches.flatMap(printsOf)),
    ...section('Parts it will make, as it stands now', benches.flatMap(partsOf)),
  ];
}

/** Set-ups as every bench used them. */
export const setupsTold = (report: ChartTold): string[] =>
  benchesIn(report).flatMap((bench) =>
    bench.account.setups.map((one) => `${named(bench)}${one.name}: ${one.text}`),
  );

/** Cautions of the report and of all its benches, each once. */
export const cautionsTold = (report: ChartTold): string[] => [
  ...new Set([...report.cautions, ...benchesIn(report).flatMap(({ account }) => account.cautions)]),
];
