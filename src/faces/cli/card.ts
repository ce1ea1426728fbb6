import type { Command } from 'commander';
import { plannedJob } from '../../contract/template.ts';
import { benchCard, benchCardWidth } from '../../draw/bench-card.ts';
import { cornerCard, type Paper, papers } from '../../draw/corner-card.ts';
import { type Shape, svgText } from '../../draw/shape.ts';
import type { Press } from '../../shop/chart/paper.ts';
import { about } from './about.ts';
import { type Doors, refused } from './doors.ts';
import type { PictureDoors } from './picture-doors.ts';
import type { Register } from './run.ts';

const example = `
Examples:
  waywright card --out card.pdf                     the corner card on A4
  waywright card --paper letter --out card.svg
  waywright card > card.svg
  waywright card --bench --out bench.pdf            the bench card to hang up: signs, blue, words, cautions
Print the corner card at 100 %; its sheet says how to check it and how to use it.`;

const isPaper = (given: string): given is Paper => Object.hasOwn(papers, given);

/** The set-up that the bench card shows: a square swept on a form of slide whose ends are called as the card calls them. */
function benchSheet(doors: Doors): Shape {
  const template = doors
    .templates()
    .find(
      ({ setups, places }) =>
        places.minus_end.startsWith('headstock') &&
        setups.some((setup) => setup.drawing === 'square-cross-sweep'),
    );
  if (!template) throw new Error('no form of slide has a square to sweep');
  return benchCard(plannedJob(template, {}, 'Bench card'));
}

const benchPdf = (sheet: Shape, press: Press, made: string, paper: Paper): Promise<Uint8Array> =>
  press(
    {
      title: 'Bench card',
      foot: 'Waywright. Reminders, not a safety rating: your local rules and the licensed trades decide.',
      width: benchCardWidth,
      pieces: [{ kind: 'drawing', drawing: sheet }],
      made,
    },
    paper,
  );

/** `waywright card [--bench] [--out FILE.svg|FILE.pdf] [--paper a4|letter]`. */
export const registerCard =
  ({ writeBytes, press }: Pick<PictureDoors, 'writeBytes'> & { readonly press: Press }): Register =>
  (program: Command, doors: Doors) => {
    program
      .command('card')
      .description(about.card)
      .option(
        '--out <file>',
        'ending in .svg or .pdf, written whole or not at all; SVG on standard output when left out',
      )
      .option(
        '--bench',
        'the bench card in its place: signs, the push test, what the blue is called, cautions',
      )
      .option('--paper <paper>', 'a4 or letter', 'a4')
      .addHelpText('after', example)
      .action(async ({ out, paper, bench }: { out?: string; paper: string; bench?: true }) => {
        if (!isPaper(paper))
          return refused(doors, `--paper: ${JSON.stringify(paper)}; expected a4 or letter`);
        const sheet = bench ? benchSheet(doors) : cornerCard(paper);
        if (out === undefined) return doors.say(svgText(sheet));
        const kind = /\.(svg|pdf)$/i.exec(out)?.[1]?.toLowerCase();
        if (kind === undefined)
          return refused(doors, `--out: ${JSON.stringify(out)}; expected a file ending in .svg or .pdf`);
        const inPdf = async () =>
          bench ? benchPdf(sheet, press, doors.now(), paper) : (await import('./card-pdf.ts')).pdfOf(sheet);
        await writeBytes(out, kind === 'pdf' ? await inPdf() : Buffer.from(`${svgText(sheet)}\n`));
        doors.say(
          bench
            ? `The bench card is in ${out}.`
            : `The corner card for ${paper} paper is in ${out}. Print it at 100 %.`,
        );
      });
  };
