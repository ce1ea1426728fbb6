import type { Command } from 'commander';
import { kitQuestion } from '../../contract/kit.ts';
import { parsedJson } from '../../contract/refusal.ts';
import { kitReport } from '../../shop/kit/kit-report.ts';
import { kitWorking } from '../../shop/kit/kit-working.ts';
import { about } from './about.ts';
import { type Doors, withFile } from './doors.ts';
import { kitText } from './kit-text.ts';
import { type Told, tell } from './working-text.ts';

const example = `
Example:
  waywright kit my-kit.json          whether each target can be proven, what limits it, what betters it
  waywright kit my-kit.json --json   the same as one JSON document
The file's shape is in docs/contract.md.`;

/** `waywright kit FILE [--json]`. */
export function registerKit(program: Command, doors: Doors): void {
  program
    .command('kit')
    .description(about.kit)
    .argument('<file>', 'JSON as in docs/contract.md; - reads standard input')
    .option('--json', 'one JSON document on standard output, and nothing else')
    .option('--inch', 'answers in inches and thou')
    .option('--working', 'every number with its formula and what was put in')
    .addHelpText('after', example)
    .action(async (file: string, options: Told & { inch?: boolean }) => {
      await withFile(doors, file, (text) => {
        const system = options.inch ? 'inch' : 'metric';
        const report = kitReport(kitQuestion(parsedJson(text)), system);
        tell(doors, options, report, kitText, () => kitWorking(report, system));
      });
    });
}
