import type { Command } from 'commander';
import { cornerCard, type Paper, papers } from '../../draw/corner-card.ts';
import { svgText } from '../../draw/shape.ts';
import { about } from './about.ts';
import { type Doors, refused } from './doors.ts';
import type { PictureDoors } from './picture-doors.ts';
import type { Register } from './run.ts';

const example = `
Examples:
  waywright card --out card.pdf                     the corner card on A4
  waywright card --paper letter --out card.svg
  waywright card > card.svg
Print it at 100 %; the sheet says how to check it and how to use it.`;

const isPaper = (given: string): given is Paper => Object.hasOwn(papers, given);

/** `waywright card [--out FILE.svg|FILE.pdf] [--paper a4|letter]`. */
export const registerCard =
  (photo: Pick<PictureDoors, 'writeBytes'>): Register =>
  (program: Command, doors: Doors) => {
    program
      .command('card')
      .description(about.card)
      .option(
        '--out <file>',
        'ending in .svg or .pdf, written whole or not at all; SVG on standard output when left out',
      )
      .option('--paper <paper>', 'a4 or letter', 'a4')
      .addHelpText('after', example)
      .action(async ({ out, paper }: { out?: string; paper: string }) => {
        if (!isPaper(paper))
          return refused(doors, `--paper: ${JSON.stringify(paper)}; expected a4 or letter`);
        const sheet = cornerCard(paper);
        if (out === undefined) return doors.say(svgText(sheet));
        const kind = /\.(svg|pdf)$/i.exec(out)?.[1]?.toLowerCase();
        if (kind === undefined)
          return refused(doors, `--out: ${JSON.stringify(out)}; expected a file ending in .svg or .pdf`);
        const inPdf = async () => (await import('./card-pdf.ts')).pdfOf(sheet);
        await photo.writeBytes(out, kind === 'pdf' ? await inPdf() : Buffer.from(`${svgText(sheet)}\n`));
        doors.say(`The corner card for ${paper} paper is in ${out}. Print it at 100 %.`);
      });
  };
