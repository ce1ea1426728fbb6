import type { Command } from 'commander';
import { axisInput } from '../../contract/axis.ts';
import { parsedJson } from '../../contract/refusal.ts';
import { axis } from '../../shop/order/axis.ts';
import { steer } from '../../shop/steer.ts';
import { type Doors, noAnswer, withFile } from './doors.ts';
import type { OrderDoors } from './order-doors.ts';
import type { Register } from './run.ts';
import { steerText } from './steer-text.ts';
import { workingText } from './working-text.ts';

const example = `
Example:
  waywright axis headstock.json          axis against the travel, and which pad of the headstock to scrape
  waywright axis headstock.json --json   the same as one JSON document
The file's shape is in docs/contract.md.`;

/** `waywright axis FILE [--working] [--json]`. */
export const registerAxis =
  ({ machines }: OrderDoors): Register =>
  (program: Command, doors: Doors) => {
    program
      .command('axis')
      .description('spindle or tailstock from a test bar turned half round, and which of its pads to scrape')
      .argument('<file>', 'JSON as in docs/contract.md; - reads standard input')
      .option('--working', 'every number with its formula')
      .option('--inch', 'sentences in inches, thou and tenths')
      .option('--json', 'one JSON document on standard output, and nothing else')
      .addHelpText('after', example)
      .action(async (file: string, options: { inch?: boolean; json?: boolean; working?: boolean }) => {
        await withFile(doors, file, async (text) => {
          const answer = axis(
            axisInput(parsedJson(text)),
            machines(),
            doors.templates(),
            options.inch ? 'inch' : 'metric',
          );
          const { steer_input } = answer;
          const steered = steer_input ? await steer(steer_input, doors.solve) : undefined;
          if (steered && !steered.ok) return noAnswer(doors, steered);
          if (options.json)
            return doors.say(JSON.stringify({ ...answer, ...(steered ? { steer: steered } : {}) }, null, 1));
          const sentences = [
            ...answer.axes.map((one) => `${one.side}: ${one.sentence}`),
            ...answer.centres.map((one) => one.sentence),
          ];
          doors.say(
            [
              ...sentences,
              ...(steered ? ['', steerText(steer_input!, steered)] : []),
              ...(options.working ? ['', workingText(answer.working)] : []),
            ].join('\n'),
          );
        });
      });
  };
