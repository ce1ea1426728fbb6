import type { Command } from 'commander';
import { parsedJson } from '../../contract/refusal.ts';
import { steerInput } from '../../contract/steer.ts';
import { caseInput } from '../../contract/worked-case.ts';
import { steer } from '../../shop/steer.ts';
import { steerWorking } from '../../shop/steer-working.ts';
import { about } from './about.ts';
import { type Doors, noAnswer, withFile } from './doors.ts';
import { steerText } from './steer-text.ts';
import { type Told, tell } from './working-text.ts';

const example = `
Example:
  waywright steer saddle.json              how far out, where to scrape, how many passes
  waywright steer saddle.json --working    and every number with its formula
  waywright steer saddle.json --json       the same as one JSON document
  cat saddle.json | waywright steer -
The file's shape is in docs/contract.md.`;

/** `waywright steer FILE [--json]`. */
export function registerSteer(program: Command, doors: Doors): void {
  program
    .command('steer')
    .description(about.steer)
    .argument('<file>', 'JSON as in docs/contract.md; - reads standard input')
    .option('--working', 'every number with its formula and what was put in, in µm and mm')
    .option('--json', 'one JSON document on standard output, and nothing else')
    .option('--inch', 'answers in inches, thou and tenths')
    .addHelpText('after', example)
    .action(async (file: string, options: Told & { inch?: boolean }) => {
      await withFile(doors, file, async (text) => {
        const input = steerInput(caseInput(parsedJson(text)));
        const system = options.inch ? 'inch' : 'metric';
        const answer = await steer(input, doors.solve, system);
        if (!answer.ok) return noAnswer(doors, answer, system);
        tell(
          doors,
          options,
          answer,
          (one) => steerText(input, one, system),
          () => steerWorking(input, answer),
        );
      });
    });
}
