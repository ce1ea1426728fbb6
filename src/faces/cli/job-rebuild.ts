import { randomUUID } from 'node:crypto';
import type { Command } from 'commander';
import { sentEntry } from '../../contract/entry.ts';
import type { Known } from '../../contract/known-fits.ts';
import { newBench, newRebuild } from '../../contract/rebuild.ts';
import { BadInput, parsedJson } from '../../contract/refusal.ts';
import type { TestList } from '../../core/chart/acceptance-test.ts';
import type { Job } from '../../core/ledger/job.ts';
import { type HeightsRecord, machineOf, stepRecords } from '../../core/ledger/rebuild-record.ts';
import { steerInput } from '../../core/ledger/steer-input.ts';
import type { Machine } from '../../core/order/machine.ts';
import { answerJob } from '../../shop/answer-job.ts';
import { openJob, writeEntry } from '../../shop/keep-job.ts';
import { forecastWorking } from '../../shop/order/forecast-working.ts';
import { order } from '../../shop/order/order.ts';
import { heightsAskOf, jobHeights, makeRebuild, openBench } from '../../shop/order/rebuild.ts';
import { steerWorking } from '../../shop/steer-working.ts';
import type { Store } from '../../shop/store.ts';
import { typedDeed } from '../../shop/typed-deed.ts';
import { type Doors, noAnswer, refuse, refused, withFile } from './doors.ts';
import { dimension, noSuchJob, sayKept } from './job-words.ts';
import type { OrderDoors } from './order-doors.ts';
import { orderText } from './order-text.ts';
import type { Register } from './run.ts';
import { steerText } from './steer-text.ts';
import { tellHeights } from './tell-heights.ts';
import { type Told, tell, withWorking } from './working-text.ts';

interface RebuildDoors extends OrderDoors {
  readonly testLists: () => readonly TestList[];
}

const example = (...lines: string[]): string => `\nExamples:\n${lines.map((line) => `  ${line}`).join('\n')}`;
const asJson = (value: unknown): string => JSON.stringify(value, null, 1);

const jobIn = async (store: Store, doors: Doors, id: string): Promise<Job> =>
  (await openJob(store, id)) ?? noSuchJob(doors, id);

function machineIn(doors: Doors, id: string, job: Job): Machine {
  return (
    machineOf(job.live) ??
    refused(doors, `id: ${JSON.stringify(id)}; expected a job about a whole machine (waywright job rebuild)`)
  );
}

/** A machine of the program by its id, or one's own from a file. */
async function wholeOf(doors: Doors, which: string): Promise<unknown> {
  if (which !== '-' && !/[./\\]/.test(which)) return which;
  return withFile(doors, which, (text) => parsedJson(text));
}

/** `waywright job rebuild | bench | order | heights | write`: a job about a whole machine, and what is written into any job. */
export const registerJobRebuild =
  ({ machines, testLists }: RebuildDoors): Register =>
  (program: Command, doors: Doors) => {
    const job = program.commands.find((one) => one.name() === 'job')!;
    const json = ['--json', 'one JSON document on standard output, and nothing else'] as const;
    const inch = ['--inch', 'answers in inches, thou and tenths'] as const;
    const known = (): Known => ({
      templates: doors.templates(),
      lists: testLists(),
      heightsFit: (record, machine) => void heightsAskOf(machine, record as HeightsRecord, doors.templates()),
    });

    job
      .command('rebuild')
      .description('a job about a whole machine: its steps, benches, heights and chart')
      .addHelpText(
        'after',
        example(
          'waywright job rebuild --machine engine-lathe --title "The long lathe" --id lathe --set centres=1500',
          'waywright job rebuild --machine my-machine.json --title "Ours"',
        ),
      )
      .requiredOption('--machine <id|file>', 'a machine of the program, or a file (machines/README.md)')
      .requiredOption('--title <text>', 'what you call it')
      .option('--id <id>', 'letters, figures, - and _; made up when left out')
      .option(
        '--set <key=value>',
        'a size of the machine; may be given again',
        (given: string, before: string[]) => [...before, given],
        [],
      )
      .option(...json)
      .action(
        async (options: { machine: string; title: string; id?: string; set: string[]; json?: boolean }) => {
          const dimensions = Object.fromEntries(options.set.map((given) => dimension(doors, given)));
          const id = options.id ?? randomUUID();
          const machine = await wholeOf(doors, options.machine);
          try {
            const asked = newRebuild(
              { id, at: doors.now(), title: options.title, machine, dimensions },
              machines(),
              doors.templates(),
            );
            const kept = await doors.withStore((store) => makeRebuild(store, doors.templates(), asked));
            sayKept(doors, asked.id, kept, options.json, 'made');
          } catch (failure) {
            if (failure instanceof BadInput) refuse(doors, 'job rebuild', failure);
            throw failure;
          }
        },
      );

    job
      .command('bench')
      .description('opens the bench of a step as a job of its own, with the room that the heights leave it')
      .addHelpText('after', example('waywright job bench lathe headstock --id lathe-headstock'))
      .argument('<id>', 'the machine’s job')
      .argument('<step>')
      .option('--id <id>', 'of the bench’s job; made up when left out')
      .option(...json)
      .action(async (id: string, step: string, options: { id?: string; json?: boolean }) => {
        try {
          const asked = newBench({ id: options.id ?? randomUUID(), at: doors.now() });
          const opened = await doors.withStore(async (store) => {
            const own = await jobIn(store, doors, id);
            machineIn(doors, id, own);
            return openBench(store, own, id, step, doors.templates(), asked);
          });
          switch (opened.kind) {
            case 'open':
              return doors.say(
                options.json
                  ? asJson({ job: opened.job, again: opened.again })
                  : `${opened.job} ${opened.again ? 'was open already' : 'opened'}`,
              );
            case 'no such step':
              return refused(
                doors,
                `step: ${JSON.stringify(step)}; expected a step (waywright job order ${id})`,
              );
            case 'no bench':
              return refused(
                doors,
                `step: ${JSON.stringify(step)}; expected a step that is scraped on a bench`,
              );
            case 'conflict':
              return refused(
                doors,
                `--id: ${JSON.stringify(asked.id)}; expected an id that no other job has`,
              );
          }
        } catch (failure) {
          if (failure instanceof BadInput) refuse(doors, 'job bench', failure);
          throw failure;
        }
      });

    job
      .command('order')
      .description('the order of work of a job about a whole machine, as it stands')
      .addHelpText('after', example('waywright job order lathe'))
      .argument('<id>')
      .option('--working', 'how the hours come about')
      .option(...json)
      .action(async (id: string, options: Told) => {
        const open = await doors.withStore((store) => jobIn(store, doors, id));
        const machine = machineIn(doors, id, open);
        const answer = order(machine, stepRecords(open.live));
        tell(doors, options, answer, orderText, () => forecastWorking(machine, answer));
      });

    job
      .command('heights')
      .description('the heights of a job’s machine as its ledger has them, link by link')
      .addHelpText('after', example('waywright job heights lathe'))
      .argument('<id>')
      .option('--working', 'every number with its formula and what was put in, in µm and mm')
      .option(...inch)
      .option(...json)
      .action(async (id: string, options: Told & { inch?: boolean }) => {
        const system = options.inch ? 'inch' : 'metric';
        const open = await doors.withStore((store) => jobIn(store, doors, id));
        machineIn(doors, id, open);
        const answer =
          jobHeights(open, doors.templates(), undefined, system) ??
          refused(doors, `id: ${JSON.stringify(id)}; expected a machine whose heights are told`);
        tellHeights(doors, options, answer);
      });

    job
      .command('write')
      .description('writes what was done into a job’s ledger (docs/job-file.md); readings as they are typed')
      .addHelpText(
        'after',
        example(
          'waywright job write saddle round-2.json --show   and where the job stands then',
          `echo '{"kind": "level read", "round": 1, "setup": "level_across", "record": {}, "reading": "-.02"}' | waywright job write saddle -`,
        ),
      )
      .argument('<id>')
      .argument('<file>', 'one deed or a list of them; - reads standard input')
      .option('--inch', 'bare readings are tenths and thou in 12 in, not µm and mm/m, and so are the answers')
      .option('--show', 'and where the job stands then')
      .option('--working', 'with --show: every number with its formula and what was put in, in µm and mm')
      .option(...json)
      .action(async (id: string, file: string, options: Told & { inch?: boolean; show?: boolean }) => {
        if (options.working && !options.show) refused(doors, '--working: without --show; expected both');
        await withFile(doors, file, async (text) => {
          const system = options.inch ? 'inch' : 'metric';
          const given = parsedJson(text);
          const deeds: unknown[] = Array.isArray(given) ? given : [given];
          const job = await doors.withStore((store) => writtenAll(store, doors, id, deeds, system, known()));
          const answer = options.show ? await answerJob(job, doors.solve, system) : undefined;
          const working =
            options.working && answer?.steer?.ok ? steerWorking(steerInput(job), answer.steer) : undefined;
          if (options.json)
            return doors.say(
              asJson({
                id,
                entries: job.seq,
                round: job.round,
                ...(answer ? { answer } : {}),
                ...(working ? { working } : {}),
              }),
            );
          doors.say(`${id}: ${deeds.length} written, ${job.seq} entries`);
          if (!answer?.steer) return;
          if (!answer.steer.ok) return noAnswer(doors, answer.steer, system);
          doors.say(`\n${withWorking(steerText(steerInput(job), answer.steer, system), working)}`);
        });
      });
  };

/** Writes deeds one after the other; one that does not fit is named by its place, and what came before it stays written. */
async function writtenAll(
  store: Store,
  doors: Doors,
  id: string,
  deeds: readonly unknown[],
  units: 'metric' | 'inch',
  known: Known,
): Promise<Job> {
  const { plan } = await jobIn(store, doors, id);
  for (const [k, deed] of deeds.entries()) {
    try {
      const own = deed !== null && typeof deed === 'object' ? deed : {};
      const stamped = { id: randomUUID(), at: doors.now(), ...own };
      const kept = await writeEntry(store, id, sentEntry(typedDeed(plan, stamped, units)), known);
      if (kept.kind !== 'kept')
        throw new BadInput([
          { path: 'id', found: 'an id that another entry has', expected: 'one of its own, or none' },
        ]);
    } catch (failure) {
      if (!(failure instanceof BadInput) || deeds.length === 1) throw failure;
      throw new BadInput(
        failure.issues.map((one) => ({ ...one, path: `[${k}]${one.path === '' ? '' : `.${one.path}`}` })),
      );
    }
  }
  return jobIn(store, doors, id);
}
