import type { Command } from 'commander';
import { machineInput } from '../../contract/machine.ts';
import { type OrderFile, orderedDeeds, orderFile } from '../../contract/order.ts';
import { BadInput, parsedJson } from '../../contract/refusal.ts';
import type { Machine } from '../../core/order/machine.ts';
import { type BenchLimits, benchPlan } from '../../shop/order/bench-plan.ts';
import { forecastWorking } from '../../shop/order/forecast-working.ts';
import { heights } from '../../shop/order/heights.ts';
import { heightsAsk } from '../../shop/order/machine-chain.ts';
import { order } from '../../shop/order/order.ts';
import { about } from './about.ts';
import { type Doors, refuse, withFile } from './doors.ts';
import { exitCodes, Leave } from './leave.ts';
import type { OrderDoors } from './order-doors.ts';
import { orderText, stepText } from './order-text.ts';
import type { Register } from './run.ts';
import { workingText } from './working-text.ts';

const example = `
Examples:
  waywright order engine-lathe                             the steps in order, what is ready, what waits and for what
  waywright order engine-lathe --done survey,support=5.5   as it stands after these, in this order; = hours spent
  waywright order engine-lathe --done survey,support,again:support   done again: what stood on it is to be re-proven
  waywright order engine-lathe --step saddle-bottom        one step: reason, proofs, cautions, what its bench opens with
  waywright order my-machine.json --json                   one's own machine; one JSON document
Steps in --done: name, again:name (metal came off again), proven:name (measured, nothing changed), open:name (must be
done again), worked:name=HOURS (hours only).`;

interface OrderOptions {
  readonly done?: string;
  readonly step?: string;
  readonly heights?: string;
  readonly working?: boolean;
  readonly inch?: boolean;
  readonly json?: boolean;
}

/** `waywright order MACHINE|FILE [--done STEPS] [--step STEP] [--json]`. */
export const registerOrder =
  ({ machines }: OrderDoors): Register =>
  (program: Command, doors: Doors) => {
    program
      .command('order')
      .description(about.order)
      .argument('<machine>', 'a machine of the program by its id, or a JSON file; - reads standard input')
      .option('--done <steps>', 'what was done, in the order it was done, with commas between')
      .option('--step <step>', 'one step by itself')
      .option(
        '--heights <file>',
        'with --step: a file as `heights` takes it; sink limits and liner stock go to the bench',
      )
      .option('--working', 'how the hours come about')
      .option('--inch', 'with --step: answers in inches, thou and tenths')
      .option('--json', 'one JSON document on standard output, and nothing else')
      .addHelpText('after', example)
      .action(async (which: string, options: OrderOptions) => {
        try {
          const asked = await machineOf(which, machines, doors);
          const deeds = [...asked.deeds, ...orderedDeeds(options.done ?? '', asked.machine)];
          const answer = order(asked.machine, deeds);
          if (options.step === undefined)
            return doors.say(
              options.json
                ? JSON.stringify(
                    options.working ? { ...answer, working: forecastWorking(asked.machine, answer) } : answer,
                    null,
                    1,
                  )
                : [
                    orderText(answer),
                    ...(options.working ? [workingText(forecastWorking(asked.machine, answer))] : []),
                  ].join('\n\n'),
            );
          const step = answer.steps.find((one) => one.id === options.step);
          if (!step)
            throw new BadInput([
              {
                path: '--step',
                found: JSON.stringify(options.step),
                expected: `one of ${answer.steps.map((one) => one.id).join(', ')}`,
              },
            ]);
          const limits =
            options.heights === undefined
              ? {}
              : await limitsOf(options.heights, asked.machine, step.id, machines(), doors);
          const bench = benchPlan(asked.machine, step.id, doors.templates(), {}, limits);
          doors.say(
            options.json
              ? JSON.stringify({ ...step, ...(bench ? { plan: bench } : {}) }, null, 1)
              : stepText(step, bench, options.inch ? 'inch' : 'metric'),
          );
        } catch (failure) {
          if (failure instanceof BadInput) refuse(doors, which, failure);
          throw failure;
        }
      });
  };

/** A file when it looks like one, else a machine of the program. */
async function machineOf(which: string, machines: OrderDoors['machines'], doors: Doors): Promise<OrderFile> {
  const all = machines();
  if (which === '-' || /[./\\]/.test(which))
    return await withFile(doors, which, (text) =>
      orderFile(parsedJson(text), all, (value) => machineInput(value, doors.templates())),
    );
  const machine = all.find((one) => one.id === which);
  if (machine) return { machine, deeds: [] };
  throw new BadInput([
    {
      path: '',
      found: JSON.stringify(which),
      expected: `a file, or one of ${all.map((one) => one.id).join(', ')}`,
    },
  ]);
}

/** What the heights leave a step's slide. */
async function limitsOf(
  file: string,
  machine: Machine,
  step: string,
  machines: readonly Machine[],
  doors: Doors,
): Promise<BenchLimits> {
  return await withFile(doors, file, (text) => {
    const answer = heights(heightsAsk(parsedJson(text), machines, doors.templates()));
    if (!answer.ok) {
      doors.complain(`no answer: ${answer.text}`);
      throw new Leave(exitCodes.noAnswer);
    }
    const slide = machine.steps.find((one) => one.id === step)?.bench?.slide;
    return answer.limits.find((one) => one.joint === slide) ?? {};
  });
}
