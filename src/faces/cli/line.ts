import type { Command } from 'commander';
import { alongInput, isAlong } from '../../contract/along.ts';
import { lineFromTable, lineInput } from '../../contract/line.ts';
import { parsedJson } from '../../contract/refusal.ts';
import { caseInput } from '../../contract/worked-case.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { LineInput } from '../../core/survey/line-input.ts';
import { svgFile } from '../../draw/shape.ts';
import { along } from '../../shop/survey/along.ts';
import { alongWorking } from '../../shop/survey/along-working.ts';
import { type LineAnswer, line } from '../../shop/survey/line.ts';
import { lineWorking } from '../../shop/survey/line-working.ts';
import { about } from './about.ts';
import { type Doors, withFile } from './doors.ts';
import { alongText } from './line-along-text.ts';
import { drawsOf, optionNumber } from './line-draws.ts';
import { lineFigure } from './line-figure.ts';
import { lineText } from './line-text.ts';
import { type Told, tell } from './working-text.ts';

const example = `
Examples:
  waywright line front-v.json                 how straight, where high, how sure
  waywright line level.csv --step 200         angles from a table, feet 200 mm apart
  waywright line front-v.json --working       and every number with its formula
  waywright line v.json --svg v.svg           the strip as a drawing
  waywright line - --json < level.csv         from standard input, as one JSON document
A table has headings with units: step_mm, angles_urad; or station [in], height [thou]; a run back stands in a column
"return" beside the run there. Shapes are in docs/contract.md.`;

interface Options extends Told {
  inch?: boolean;
  step?: string;
  sd?: string;
  svg?: string;
  draws?: string;
  seed?: string;
}

/** `waywright line FILE [--json]`. */
export function registerLine(program: Command, doors: Doors): void {
  program
    .command('line')
    .description(about.line)
    .argument('<file>', 'JSON or CSV as in docs/contract.md; - reads standard input')
    .option('--working', 'every number with its formula and what was put in')
    .option('--json', 'one JSON document on standard output, and nothing else')
    .option('--inch', 'answers in inches, thou and tenths')
    .option('--step <mm>', 'distance between the feet, for a table that does not hold it')
    .option(
      '--sd <number>',
      'one sd of a reading, µrad or µm, for a table; else nothing is known of the doubt',
    )
    .option('--svg <file>', 'writes the strip as a drawing')
    .option('--draws <number>', 'draws the readings anew so often, to see what noise does to the result')
    .option('--seed <number>', 'of the draws; 1 when left out')
    .addHelpText('after', example)
    .action(async (file: string, options: Options) => {
      const system = options.inch ? 'inch' : 'metric';
      await withFile(doors, file, async (text) => {
        const asked = isJson(text) ? caseInput(parsedJson(text)) : undefined;
        if (isAlong(asked)) {
          const input = alongInput(asked);
          const found = along(input, drawsOf(options), system);
          tell(
            doors,
            options,
            found,
            () => alongText(found, system),
            () => alongWorking(input, found, system),
          );
          return;
        }
        const { input, answer } = answered(text, asked, options, system);
        if (options.svg !== undefined)
          await doors.writeText(options.svg, svgFile(lineFigure(answer, input, system)));
        tell(
          doors,
          options,
          answer,
          (one) => lineText(one, system),
          () => lineWorking(input, answer, system),
        );
      });
    });
}

/** A text that opens a JSON object or list is JSON; all else is a table. */
export const isJson = (text: string): boolean => /^\uFEFF?\s*[[{]/.test(text);

function answered(
  text: string,
  asked: unknown,
  options: Options,
  system: UnitSystem,
): { input: LineInput; answer: LineAnswer } {
  if (asked !== undefined) {
    const input = lineInput(asked);
    return { input, answer: line(input, undefined, drawsOf(options), system) };
  }
  const step_mm = optionNumber(
    '--step',
    options.step,
    'the distance between the feet, mm, 0.001 or more',
    1e-3,
  );
  const reading_sd = optionNumber('--sd', options.sd, 'one sd of a reading, µrad or µm, 0 or more', 0);
  const pasted = lineFromTable(text, {
    ...(step_mm === undefined ? {} : { step_mm }),
    ...(reading_sd === undefined ? {} : { reading_sd }),
  });
  return { input: pasted.input, answer: line(pasted.input, pasted, drawsOf(options), system) };
}
