import type { Command } from 'commander';
import { parsedJson } from '../../contract/refusal.ts';
import { restInput } from '../../contract/rest.ts';
import { caseInput } from '../../contract/worked-case.ts';
import { rest } from '../../shop/rest.ts';
import { type Doors, noAnswer, withFile } from './doors.ts';
import { restText } from './rest-text.ts';

const example = `
Example:
  waywright rest saddle-on-bed.json        where it touches, how far it leans
  waywright rest saddle-on-bed.json --json the same as one JSON document
The file's shape is in docs/contract.md.`;

/** `waywright rest FILE [--json]`. */
export function registerRest(program: Command, doors: Doors): void {
  program
    .command('rest')
    .description('how a slide sits on what it touches, and how much of it bears')
    .argument('<file>', 'JSON as in docs/contract.md; - reads standard input')
    .option('--json', 'one JSON document on standard output, and nothing else')
    .addHelpText('after', example)
    .action(async (file: string, options: { json?: boolean }) => {
      await withFile(doors, file, (text) => {
        const input = restInput(caseInput(parsedJson(text)));
        const answer = rest(input);
        if (!answer.ok) return noAnswer(doors, answer);
        doors.say(options.json ? JSON.stringify(answer, null, 1) : restText(input, answer));
      });
    });
}
