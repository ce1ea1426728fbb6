import type { Command } from 'commander';
import { maskFile, printAsk } from '../../contract/print.ts';
import { BadInput, parsedJson } from '../../contract/refusal.ts';
import { overPhoto, printOverlay } from '../../draw/print-overlay.ts';
import { svgFile } from '../../draw/shape.ts';
import type { PhotoReading } from '../../shop/print/photo-reading.ts';
import { printWorking } from '../../shop/print/print-working.ts';
import { readPhoto, secondPhoto } from '../../shop/print/read-photo.ts';
import { squareSide_mm } from '../../shop/print/reading-words.ts';
import { about } from './about.ts';
import { type Doors, refuse, refused, withFile } from './doors.ts';
import type { PictureDoors } from './picture-doors.ts';
import { agreementText, printText } from './print-text.ts';
import type { Register } from './run.ts';
import { type Told, tell } from './working-text.ts';

const example = `
Examples:
  waywright print flat.jpg --size 400x80 --corners "210,340 3800,310 3870,1120 190,1160"
  waywright print flat.jpg --size 400x80 --json         corners found with the card or by the outline
  waywright print flat.jpg --size 400x80 --mask grooves.json --overlay seen.png
  waywright print flat.jpg --size 400x80 --second again.jpg
Corners are pixels of the photo as it is shown, in the order (0,0), (L,0), (L,W), (0,W) of the surface. The corner card: waywright card.
The mask and the answer are in docs/contract.md.`;

interface Options extends Told {
  readonly size: string;
  readonly corners?: string;
  readonly mask?: string;
  readonly cell?: string;
  readonly zones?: string;
  readonly inch?: boolean;
  readonly overlay?: string;
  readonly second?: string;
  readonly secondCorners?: string;
}

/** What is no number stays text, and is refused by its field. */
const number = (given: string): number | string =>
  given.trim() !== '' && Number.isFinite(Number(given)) ? Number(given) : given;

function overlayKind(doors: Doors, file: string): 'svg' | 'png' {
  const kind = /\.(svg|png)$/i.exec(file)?.[1]?.toLowerCase();
  if (kind === 'svg' || kind === 'png') return kind;
  refused(doors, `--overlay: ${JSON.stringify(file)}; expected a file ending in .svg or .png`);
}

async function writeOverlay(
  photo: PictureDoors,
  file: string,
  kind: 'svg' | 'png',
  bytes: Uint8Array,
  reading: PhotoReading,
): Promise<void> {
  const drawing = printOverlay(reading);
  if (kind === 'png') return photo.writeBytes(file, await photo.laidOver(bytes, svgFile(drawing)));
  const base64 = Buffer.from(await photo.upright(bytes)).toString('base64');
  return photo.writeBytes(file, Buffer.from(svgFile(overPhoto(drawing, { base64 }))));
}

/** `waywright print PHOTO --size LxW [--corners …] [--mask FILE] [--cell 25|25.4] [--zones N] [--json] [--overlay FILE]`. */
export const registerPrint =
  (photo: PictureDoors): Register =>
  (program: Command, doors: Doors) => {
    program
      .command('print')
      .description(about.print)
      .argument('<photo>', 'JPEG, PNG, WebP or TIFF')
      .requiredOption(
        '--size <LxW>',
        'length and width of the surface in mm, as 400x80, or in inches, as 16x3in',
      )
      .option('--corners <places>', '"x,y x,y x,y x,y" in pixels; looked for when left out')
      .option('--mask <file>', 'JSON {exclusions}: grooves and holes, in mm')
      .option('--cell <mm>', 'side of the squares: 25, or 25.4 for an inch')
      .option('--zones <n>', 'bearing share of so many zones along the length')
      .option('--second <photo>', 'another photo of the same print: do they agree?')
      .option('--second-corners <places>', 'corners in that one; looked for when left out')
      .option('--inch', 'answers in inches; a size without its unit is in inches, squares are inch squares')
      .option('--working', 'every number with its formula and what was put in, in mm')
      .option('--json', 'one JSON document on standard output, and nothing else')
      .option('--overlay <file>', 'the photo with squares, counts and spots drawn on it, .svg or .png')
      .addHelpText('after', example)
      .action(async (file: string, options: Options) => {
        const { corners, cell, zones, mask, overlay } = options;
        const system = options.inch ? 'inch' : 'metric';
        const size = options.inch && /\d\s*$/.test(options.size) ? `${options.size}in` : options.size;
        const kind = overlay === undefined ? undefined : overlayKind(doors, overlay);
        const exclusions =
          mask === undefined ? undefined : await withFile(doors, mask, (text) => maskFile(parsedJson(text)));
        let at = file;
        try {
          const asked = printAsk({
            size,
            ...(corners === undefined ? {} : { corners }),
            ...(exclusions === undefined ? {} : { exclusions }),
            ...(cell === undefined
              ? options.inch
                ? { cell_mm: squareSide_mm('inch') }
                : {}
              : { cell_mm: number(cell) }),
            ...(zones === undefined ? {} : { zones: number(zones) }),
          });
          const bytes = await photo.readBytes(file);
          const reading = await readPhoto(bytes, asked, photo.decode);
          if (overlay !== undefined && kind) await writeOverlay(photo, overlay, kind, bytes, reading);
          if (options.second === undefined)
            return tell(
              doors,
              options,
              reading,
              () => printText(reading, system),
              () => printWorking(reading),
            );
          const { second, secondCorners } = options;
          // What goes wrong from here on is the second photo's.
          at = second;
          const { corners: _, ...same } = asked;
          const held = await secondPhoto(
            reading,
            await photo.readBytes(second),
            secondCorners === undefined ? same : { ...same, ...printAsk({ size, corners: secondCorners }) },
            photo.decode,
          );
          doors.say(
            options.json
              ? JSON.stringify({ ...reading, second: held }, null, 1)
              : `${printText(reading, system)}\n\n${agreementText(held.agreement, reading.cell_mm, system)}`,
          );
        } catch (failure) {
          if (failure instanceof BadInput) refuse(doors, at, failure);
          throw failure;
        }
      });
  };
