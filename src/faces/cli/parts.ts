import type { Command } from 'commander';
import { partsInput } from '../../contract/parts.ts';
import { parsedJson } from '../../contract/refusal.ts';
import { caseInput } from '../../contract/worked-case.ts';
import { svgFile } from '../../draw/shape.ts';
import { parts } from '../../shop/parts.ts';
import { partsWorking } from '../../shop/parts-working.ts';
import { about } from './about.ts';
import { type Doors, noAnswer, refused, withFile } from './doors.ts';
import { partsFigures } from './parts-figures.ts';
import { partsText } from './parts-text.ts';
import { type Told, tell } from './working-text.ts';

const example = `
Example:
  waywright parts lathe.json                  what comes off, in sentences
  waywright parts lathe.json --json           the same as one JSON document
  waywright parts lathe.json --svg parts.svg  and as pictures, written whole or not at all
The file's shape is in docs/contract.md.`;

/** `waywright parts FILE [--json] [--svg FILE]`. */
export function registerParts(program: Command, doors: Doors): void {
  program
    .command('parts')
    .description(about.parts)
    .argument('<file>', 'JSON as in docs/contract.md; - reads standard input')
    .option('--json', 'one JSON document on standard output, and nothing else')
    .option('--svg <file>', 'the parts drawn, a file ending in .svg')
    .option('--inch', 'answers in inches, thou and tenths')
    .option('--working', 'every number with its formula and what was put in')
    .addHelpText('after', example)
    .action(async (file: string, options: Told & { svg?: string; inch?: boolean }) => {
      if (options.svg !== undefined && !/\.svg$/i.test(options.svg))
        refuseSvg(doors, `${JSON.stringify(options.svg)}; expected a file ending in .svg`);
      await withFile(doors, file, async (text) => {
        const system = options.inch ? 'inch' : 'metric';
        const answer = parts(partsInput(caseInput(parsedJson(text))), system);
        if (!answer.ok) return noAnswer(doors, answer);
        if (options.svg !== undefined) {
          const sheet = partsFigures(answer, system);
          if (!sheet)
            return refuseSvg(doors, 'only wear was asked, which has no picture; expected "lathe" or "mill"');
          await doors.writeText(options.svg, svgFile(sheet));
        }
        tell(doors, options, answer, partsText, () => partsWorking(answer, system));
      });
    });
}

function refuseSvg(doors: Doors, why: string): never {
  refused(doors, `--svg: ${why}`);
}
