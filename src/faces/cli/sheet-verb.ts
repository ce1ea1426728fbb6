import type { Command } from 'commander';
import { parsedJson } from '../../contract/refusal.ts';
import type { Template } from '../../contract/template.ts';
import type { SteerInput } from '../../core/observe/round.ts';
import type { Machine } from '../../core/order/machine.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { steer } from '../../shop/steer.ts';
import type { Worked } from '../../shop/worked.ts';
import { about, type VerbName } from './about.ts';
import { type Doors, noAnswer, withFile } from './doors.ts';
import type { OrderDoors } from './order-doors.ts';
import type { Register } from './run.ts';
import { steerText } from './steer-text.ts';
import { workingText } from './working-text.ts';

/** What a sheet of a whole machine answers: its working, and the slide to steer where it asked which face to scrape. */
interface SheetAnswer {
  readonly steer_input?: SteerInput;
  readonly working: readonly Worked[];
}

/** A sheet of a whole machine as a verb: what it is called, how it is read and answered, what people are told of it. */
interface Sheet<Ask, Answer extends SheetAnswer> {
  readonly verb: VerbName;
  readonly example: string;
  /** @throws BadInput  naming the field */
  readonly read: (json: unknown) => Ask;
  readonly answer: (
    ask: Ask,
    machines: readonly Machine[],
    templates: readonly Template[],
    system: UnitSystem,
  ) => Answer;
  readonly sentences: (answer: Answer) => readonly string[];
}

/** `waywright VERB FILE [--working] [--inch] [--json]`: the sheet's answer, and what to scrape where the sheet asks that. */
export const registerSheet =
  <Ask, Answer extends SheetAnswer>(sheet: Sheet<Ask, Answer>) =>
  ({ machines }: OrderDoors): Register =>
  (program: Command, doors: Doors) => {
    program
      .command(sheet.verb)
      .description(about[sheet.verb])
      .argument('<file>', 'JSON as in docs/contract.md; - reads standard input')
      .option('--working', 'every number with its formula')
      .option('--inch', 'answers in inches, thou and tenths')
      .option('--json', 'one JSON document on standard output, and nothing else')
      .addHelpText('after', sheet.example)
      .action(async (file: string, options: { inch?: boolean; json?: boolean; working?: boolean }) => {
        await withFile(doors, file, async (text) => {
          const system = options.inch ? 'inch' : 'metric';
          const answer = sheet.answer(sheet.read(parsedJson(text)), machines(), doors.templates(), system);
          const { steer_input } = answer;
          const steered = steer_input ? await steer(steer_input, doors.solve, system) : undefined;
          if (steered && !steered.ok) return noAnswer(doors, steered, system);
          if (options.json)
            return doors.say(JSON.stringify({ ...answer, ...(steered ? { steer: steered } : {}) }, null, 1));
          doors.say(
            [
              ...sheet.sentences(answer),
              ...(steered ? ['', steerText(steer_input!, steered, system)] : []),
              ...(options.working ? ['', workingText(answer.working)] : []),
            ].join('\n'),
          );
        });
      });
  };
