import type { Command } from 'commander';
import { plateFromTable, plateInput } from '../../contract/plate.ts';
import { parsedJson } from '../../contract/refusal.ts';
import { caseInput } from '../../contract/worked-case.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { svgFile } from '../../draw/shape.ts';
import { type PlateAnswer, plate } from '../../shop/survey/plate.ts';
import { plateWorking } from '../../shop/survey/plate-working.ts';
import { about } from './about.ts';
import { type Doors, withFile } from './doors.ts';
import { isJson } from './line.ts';
import { drawsOf, optionNumber } from './line-draws.ts';
import { plateFigure } from './plate-figure.ts';
import { plateText } from './plate-text.ts';
import { type Told, tell } from './working-text.ts';

const example = `
Examples:
  waywright plate table.json                    how flat, what holds it, where to scrape
  waywright plate points.csv --pass 4           depths in whole passes of 4 µm
  waywright plate - --json < eight-lines.json   from standard input, as one JSON document
A table has headings with units: x_mm, y_mm, z_um; or the eight lines side by side. Shapes are in docs/contract.md.`;

interface Options extends Told {
  inch?: boolean;
  pass?: string;
  sd?: string;
  svg?: string;
  draws?: string;
  seed?: string;
}

/** `waywright plate FILE [--json]`. */
export function registerPlate(program: Command, doors: Doors): void {
  program
    .command('plate')
    .description(about.plate)
    .argument('<file>', 'JSON or CSV as in docs/contract.md; - reads standard input')
    .option('--json', 'one JSON document on standard output, and nothing else')
    .option('--inch', 'answers in inches, thou and tenths')
    .option('--working', 'every number with its formula and what was put in')
    .option('--pass <um>', 'what a pass takes off: depths in whole passes, for a table')
    .option(
      '--sd <number>',
      'one sd of a reading, µm or µrad, for a table; else nothing is known of the doubt',
    )
    .option('--svg <file>', 'writes the map of depths as a drawing')
    .option('--draws <number>', 'draws the readings anew so often, to see what noise does to the result')
    .option('--seed <number>', 'of the draws; 1 when left out')
    .addHelpText('after', example)
    .action(async (file: string, options: Options) => {
      const system = options.inch ? 'inch' : 'metric';
      await withFile(doors, file, async (text) => {
        const answer = answered(text, options, system);
        if (options.svg !== undefined)
          await doors.writeText(options.svg, svgFile(plateFigure(answer, system)));
        tell(
          doors,
          options,
          answer,
          () => plateText(answer, system),
          () => plateWorking(answer, system),
        );
      });
    });
}

function answered(text: string, options: Options, system: UnitSystem): PlateAnswer {
  if (isJson(text))
    return plate(plateInput(caseInput(parsedJson(text))), undefined, drawsOf(options), system);
  const isAngles = /falling|rising|urad|arcsec/i.test(text);
  const pasted = plateFromTable(text, {
    ...(options.pass === undefined
      ? {}
      : { pass_um: optionNumber('--pass', options.pass, 'what a pass takes, µm, 0.001 or more', 1e-3)! }),
    ...(options.sd === undefined
      ? {}
      : {
          [isAngles ? 'reading_sd_urad' : 'reading_sd_um']: optionNumber(
            '--sd',
            options.sd,
            'one sd of a reading, µm or µrad, 0 or more',
            0,
          )!,
        }),
  });
  return plate(pasted.input, pasted, drawsOf(options), system);
}
