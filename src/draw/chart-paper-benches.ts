import { paragraph } from './chart-sheet.ts';
import type { AccountTold, ChartTold, ChartPiece as Piece, PrintDrawn, SlideTold } from './chart-told.ts';
import { body, drawn, section, words } from './paper-words.ts';
import { scrapeMap } from './scrape-map.ts';

/** One bench of the report: its step's title, absent for a job about one slide only. */
interface Bench {
  readonly step?: string;
  readonly account: AccountTold;
  readonly slide?: SlideTold | undefined;
}

const isWorked = ({ account }: Bench): boolean => account.rounds.length > 0;

/** The benches that a report tells of: the job's own, then those that are jobs of their own. */
const benchesIn = ({ job, slide, benches }: ChartTold): Bench[] => [
  ...(job ? [{ account: job, slide }] : []),
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

const named = ({ step }: Bench): string => (step === undefined ? '' : `${step}. `);

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

/** What was done on every bench, round by round, and the prints before and after; nothing of a bench where nothing was measured. */
export function benchPieces(report: ChartTold): Piece[] {
  const benches = benchesIn(report).filter(isWorked);
  return [
    ...section('What was done', [...words(report.done), ...benches.flatMap(roundsOf)]),
    ...section('Prints', benches.flatMap(printsOf)),
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
