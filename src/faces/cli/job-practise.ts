import { randomUUID } from 'node:crypto';
import type { Command } from 'commander';
import { sentEntry } from '../../contract/entry.ts';
import { newPractice, practiceTurn } from '../../contract/practice.ts';
import { BadInput } from '../../contract/refusal.ts';
import type { Job } from '../../core/ledger/job.ts';
import { type PracticeRecord, practiceLevels, slipKinds } from '../../core/practice/record.ts';
import { practiceMaterials, practiceSlides } from '../../core/practice/slides.ts';
import { answerJob } from '../../shop/answer-job.ts';
import { makePractice, openJob, writeEntry } from '../../shop/keep-job.ts';
import { type PracticeDeed, practiceDeeds } from '../../shop/practise/practice-deeds.ts';
import { measurePractice, printPractice, truthOfPractice } from '../../shop/practise/practice-job.ts';
import { practiceOf } from '../../shop/practise/practice-of.ts';
import { toldAndTrue } from '../../shop/practise/truth-words.ts';
import type { Store } from '../../shop/store.ts';
import { type Doors, noAnswer, refuse, refused } from './doors.ts';
import { noSuchJob, sayKept } from './job-words.ts';
import { table } from './table.ts';

const asJson = (value: unknown): string => JSON.stringify(value, null, 1);
const listed = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(', ');

interface Begun {
  readonly slide: string;
  readonly material: string;
  readonly level: string;
  readonly seed: string;
  readonly slip: readonly string[];
  readonly title: string;
  readonly id?: string;
  readonly json?: boolean;
}

/** `waywright job practise | measure | blue | truth`: a simulated machine kept as a job, worked by hand as one of metal is. */
export function registerJobPractise(program: Command, doors: Doors): void {
  const job = program.commands.find((one) => one.name() === 'job')!;
  const json = ['--json', 'one JSON document on standard output, and nothing else'] as const;
  const example = (...lines: string[]): string =>
    `\nExamples:\n${lines.map((line) => `  ${line}`).join('\n')}`;

  job
    .command('practise')
    .description('a simulated machine as a job: measure, blue and scrape it as if it were of metal')
    .addHelpText(
      'after',
      example(
        'waywright job practise --seed 12 --id saddle',
        'waywright job measure saddle --json | waywright job write saddle -',
        'waywright job blue saddle --json | waywright job write saddle - --show',
      ),
    )
    .option('--slide <name>', `one of ${listed(Object.keys(practiceSlides))}`, 'V and flat')
    .option('--material <name>', `one of ${listed(practiceMaterials)}`, 'liner')
    .option('--level <name>', `how far worn: one of ${listed(practiceLevels)}`, 'usual')
    .option('--seed <n>', 'the machine’s number; the same number is the same machine', '1')
    .option(
      '--slip <kind>',
      `a mistake made on purpose: ${listed([...slipKinds, 'surprise'])}; may be given again`,
      (given: string, before: string[]) => [...before, given],
      [],
    )
    .option('--title <text>', 'what you call it', 'Practice machine')
    .option('--id <id>', 'letters, figures, - and _; made up when left out')
    .option(...json)
    .action(async ({ slip, id = randomUUID(), json: asked, seed, ...options }: Begun) => {
      await held('job practise', async () => {
        const wanted = newPractice({
          ...options,
          // What is no number is held to the schema as it was typed.
          seed: /^\d+$/.test(seed) ? Number(seed) : seed,
          slips: slip,
          id,
          at: doors.now(),
        });
        const kept = await doors.withStore((store) => makePractice(store, wanted));
        sayKept(doors, id, kept, asked, 'made');
      });
    });

  job
    .command('measure')
    .description('what the instruments of a practice machine show now; with --json as deeds for `job write`')
    .addHelpText('after', example('waywright job measure saddle --json | waywright job write saddle -'))
    .argument('<id>')
    .option('--repeat <n>', 'seat it anew and read it again: 1 for the first time, and so on', '0')
    .option(...json)
    .action(async (id: string, options: { repeat: string; json?: boolean }) => {
      await held('job measure', async () => {
        const { open, record } = await doors.withStore((store) => practised(store, id));
        const repeat = /^\d+$/.test(options.repeat) ? Number(options.repeat) : options.repeat;
        const turn = practiceTurn({ round: open.round, repeat });
        const deeds = practiceDeeds(measurePractice(open, record, turn.round, turn.repeat));
        doors.say(options.json ? asJson(deeds) : measuredText(open, deeds));
      });
    });

  job
    .command('blue')
    .description('blues a practice machine and prints it; with --json as a deed for `job write`')
    .addHelpText('after', example('waywright job blue saddle --json | waywright job write saddle - --show'))
    .argument('<id>')
    .option(...json)
    .action(async (id: string, options: { json?: boolean }) => {
      const { open, record } = await doors.withStore((store) => practised(store, id));
      const { round, share } = printPractice(open, record, open.round);
      const deed: PracticeDeed = { kind: 'print read', round, share };
      doors.say(options.json ? asJson(deed) : printedText(open, deed.share));
    });

  job
    .command('truth')
    .description('asks for the truth of a practice machine, which its ledger then says: told beside true')
    .addHelpText('after', example('waywright job truth saddle'))
    .argument('<id>')
    .option(...json)
    .action(async (id: string, options: { json?: boolean }) => {
      const { open, record } = await doors.withStore((store) => practised(store, id));
      const { steer } = await answerJob(open, doors.solve);
      if (!steer) return refused(doors, `id: ${JSON.stringify(id)}; expected a job that was measured`);
      if (!steer.ok) return noAnswer(doors, steer);
      // Whoever looks at the ledger later sees from when on the truth was known.
      const shown = { kind: 'truth shown', round: open.round, id: randomUUID(), at: doors.now() };
      await doors.withStore((store) => writeEntry(store, id, sentEntry(shown)));
      const truth = truthOfPractice(open, record);
      const rows = toldAndTrue(open.plan, steer, truth.rounds.at(-1)!, 'metric');
      if (options.json) return doors.say(asJson({ ...truth, told_and_true: rows }));
      doors.say(
        table(
          [`told and true, round ${open.round}`, 'told', 'true', '', ''],
          rows.map((row) => [row.name, row.told, row.true, row.unit, row.holds ?? '']),
        ),
      );
    });

  /** Runs a verb, and refuses on standard error what it was given wrong. */
  async function held(verb: string, work: () => Promise<void>): Promise<void> {
    try {
      await work();
    } catch (failure) {
      if (failure instanceof BadInput) refuse(doors, verb, failure);
      throw failure;
    }
  }

  async function practised(store: Store, id: string): Promise<{ open: Job; record: PracticeRecord }> {
    const open = (await openJob(store, id)) ?? noSuchJob(doors, id);
    const record =
      practiceOf(open) ??
      refused(doors, `id: ${JSON.stringify(id)}; expected a practice machine (waywright job practise)`);
    return { open, record };
  }
}

const nameOf = (open: Job, setup: string): string =>
  open.plan.setups.find((one) => one.id === setup)?.name ?? setup;

function measuredText(open: Job, deeds: readonly PracticeDeed[]): string {
  const rows = deeds.flatMap((deed): string[][] => {
    if (deed.kind === 'sweep taken')
      return [
        [nameOf(open, deed.setup), `plunger in: ${deed.record.push ?? ''}`, `${deed.readings.join('  ')} µm`],
      ];
    return deed.kind === 'level read' ? [[nameOf(open, deed.setup), '', deed.reading]] : [];
  });
  return table([`round ${open.round}`, '', 'shows'], rows);
}

function printedText(open: Job, share: Readonly<Record<string, readonly number[]>>): string {
  return table(
    [`print, round ${open.round}`, 'blue by zone, %, zone 1 at the minus end'],
    Object.entries(share).map(([pad, zones]) => [
      pad,
      zones.map((one) => String(Math.round(100 * one))).join('  '),
    ]),
  );
}
