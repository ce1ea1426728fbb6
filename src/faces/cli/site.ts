import type { Command } from 'commander';
import { parsedJson } from '../../contract/refusal.ts';
import { siteInput } from '../../contract/site.ts';
import { caseInput } from '../../contract/worked-case.ts';
import { site } from '../../shop/site.ts';
import { siteWorking } from '../../shop/site-working.ts';
import { about } from './about.ts';
import { type Doors, noAnswer, withFile } from './doors.ts';
import { siteText } from './site-text.ts';
import { type Told, tell } from './working-text.ts';

const example = `
Example:
  waywright site bed.json          where along a worn bed to print, and what each place costs
  waywright site bed.json --json   the same as one JSON document
The file's shape is in docs/contract.md.`;

/** `waywright site FILE [--json]`. */
export function registerSite(program: Command, doors: Doors): void {
  program
    .command('site')
    .description(about.site)
    .argument('<file>', 'JSON as in docs/contract.md; - reads standard input')
    .option('--json', 'one JSON document on standard output, and nothing else')
    .option('--inch', 'answers in inches, thou and tenths')
    .option('--working', 'every number with its formula and what was put in')
    .addHelpText('after', example)
    .action(async (file: string, options: Told & { inch?: boolean }) => {
      await withFile(doors, file, (text) => {
        const system = options.inch ? 'inch' : 'metric';
        const ask = siteInput(caseInput(parsedJson(text)));
        const answer = site(ask, system);
        if (!answer.ok) return noAnswer(doors, answer);
        tell(
          doors,
          options,
          answer,
          () => siteText(answer, system),
          () => siteWorking(answer, ask.duty, system),
        );
      });
    });
}
