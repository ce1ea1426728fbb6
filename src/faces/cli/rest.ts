import type { Command } from 'commander';
import { parsedJson } from '../../contract/refusal.ts';
import { restInput } from '../../contract/rest.ts';
import { caseInput } from '../../contract/worked-case.ts';
import { svgFile } from '../../draw/shape.ts';
import { rest } from '../../shop/rest.ts';
import { restWorking } from '../../shop/rest-working.ts';
import { about } from './about.ts';
import { type Doors, noAnswer, refused, withFile } from './doors.ts';
import { blueToExpect } from './rest-figure.ts';
import { restText } from './rest-text.ts';
import { type Told, tell } from './working-text.ts';

const example = `
Example:
  waywright rest saddle-on-bed.json        where it touches, how far it leans
  waywright rest saddle-on-bed.json --json the same as one JSON document
  waywright rest saddle-on-bed.json --svg blue.svg  and the blue to expect, drawn on the pads
The file's shape is in docs/contract.md.`;

/** `waywright rest FILE [--json]`. */
export function registerRest(program: Command, doors: Doors): void {
  program
    .command('rest')
    .description(about.rest)
    .argument('<file>', 'JSON as in docs/contract.md; - reads standard input')
    .option('--json', 'one JSON document on standard output, and nothing else')
    .option('--inch', 'answers in inches, thou and tenths')
    .option('--working', 'every number with its formula and what was put in, in µm and mm')
    .option('--svg <file>', 'the blue to expect on the pads, a file ending in .svg')
    .addHelpText('after', example)
    .action(async (file: string, options: Told & { svg?: string; inch?: boolean }) => {
      if (options.svg !== undefined && !/\.svg$/i.test(options.svg)) {
        refused(doors, `--svg: ${JSON.stringify(options.svg)}; expected a file ending in .svg`);
      }
      await withFile(doors, file, async (text) => {
        const input = restInput(caseInput(parsedJson(text)));
        const system = options.inch ? 'inch' : 'metric';
        const answer = rest(input, system);
        if (!answer.ok) return noAnswer(doors, answer);
        if (options.svg !== undefined)
          await doors.writeText(options.svg, svgFile(blueToExpect(input, answer)));
        tell(
          doors,
          options,
          answer,
          () => restText(input, answer, system),
          () => restWorking(input, answer),
        );
      });
    });
}
