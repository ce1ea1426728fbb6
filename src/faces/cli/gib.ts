import type { Command } from 'commander';
import { gibInput } from '../../contract/gib.ts';
import { parsedJson } from '../../contract/refusal.ts';
import { gib } from '../../shop/gib.ts';
import { steer } from '../../shop/steer.ts';
import { type Doors, noAnswer, withFile } from './doors.ts';
import type { OrderDoors } from './order-doors.ts';
import type { Register } from './run.ts';
import { steerText } from './steer-text.ts';
import { workingText } from './working-text.ts';

const example = `
Example:
  waywright gib cross-slide.json            dovetail over rolls, taper, play at both ends, what to do, where to scrape
  waywright gib cross-slide.json --working  and every number with its formula
  waywright gib cross-slide.json --json     the same as one JSON document
The file's shape is in docs/contract.md.`;

/** `waywright gib FILE [--working] [--json]`. */
export const registerGib =
  ({ machines }: OrderDoors): Register =>
  (program: Command, doors: Doors) => {
    program
      .command('gib')
      .description(
        'a dovetail over rolls, its gib and keepers: how far to push it in, shim or cut again, where to scrape',
      )
      .argument('<file>', 'JSON as in docs/contract.md; - reads standard input')
      .option('--working', 'every number with its formula')
      .option('--inch', 'sentences in inches, thou and tenths')
      .option('--json', 'one JSON document on standard output, and nothing else')
      .addHelpText('after', example)
      .action(async (file: string, options: { inch?: boolean; json?: boolean; working?: boolean }) => {
        await withFile(doors, file, async (text) => {
          const answer = gib(
            gibInput(parsedJson(text)),
            machines(),
            doors.templates(),
            options.inch ? 'inch' : 'metric',
          );
          const { steer_input } = answer;
          const steered = steer_input ? await steer(steer_input, doors.solve) : undefined;
          if (steered && !steered.ok) return noAnswer(doors, steered);
          if (options.json)
            return doors.say(JSON.stringify({ ...answer, ...(steered ? { steer: steered } : {}) }, null, 1));
          const told = [
            answer.rolls && `Rolls: ${answer.rolls.sentence}`,
            answer.angle_check && `Angle: ${answer.angle_check.sentence}`,
            answer.gib && `Gib: ${answer.gib.sentence}`,
            answer.space && `Space: ${answer.space.sentence}`,
            answer.play && `Play: ${answer.play.sentence}`,
            ...answer.keepers.map((one) => `Keeper, ${one.sentence}`),
          ].filter((one) => one !== undefined);
          doors.say(
            [
              ...told,
              ...(steered ? ['', steerText(steer_input!, steered)] : []),
              ...(options.working ? ['', workingText(answer.working)] : []),
            ].join('\n'),
          );
        });
      });
  };
