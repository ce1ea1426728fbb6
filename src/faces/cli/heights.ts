import type { Command } from 'commander';
import { parsedJson } from '../../contract/refusal.ts';
import { heights } from '../../shop/order/heights.ts';
import { heightsAsk } from '../../shop/order/machine-chain.ts';
import { about } from './about.ts';
import { type Doors, withFile } from './doors.ts';
import type { OrderDoors } from './order-doors.ts';
import type { Register } from './run.ts';
import { tellHeights } from './tell-heights.ts';
import type { Told } from './working-text.ts';

const example = `
Example:
  waywright heights saddle.json          every height link by link, liners worked out, room left to scrape
  waywright heights saddle.json --json   the same as one JSON document
The file's shape is in docs/contract.md.`;

/** `waywright heights FILE [--json]`. */
export const registerHeights =
  ({ machines }: OrderDoors): Register =>
  (program: Command, doors: Doors) => {
    program
      .command('heights')
      .description(about.heights)
      .argument('<file>', 'JSON as in docs/contract.md; - reads standard input')
      .option('--working', 'every number with its formula and what was put in, in µm and mm')
      .option('--inch', 'answers in inches, thou and tenths')
      .option('--json', 'one JSON document on standard output, and nothing else')
      .addHelpText('after', example)
      .action(async (file: string, options: Told & { inch?: boolean }) => {
        await withFile(doors, file, (text) => {
          const system = options.inch ? 'inch' : 'metric';
          tellHeights(
            doors,
            options,
            heights(heightsAsk(parsedJson(text), machines(), doors.templates()), system),
          );
        });
      });
  };
