import { randomUUID } from 'node:crypto';
import type { Command } from 'commander';
import { importQuery, jobFile, jobFileText } from '../../contract/job-file.ts';
import { newJob } from '../../contract/new-job.ts';
import { BadInput, parsedJson } from '../../contract/refusal.ts';
import { writtenSteerInput } from '../../contract/written-steer.ts';
import { steerInput } from '../../core/ledger/steer-input.ts';
import { answerJob } from '../../shop/answer-job.ts';
import { photosTakenWords } from '../../shop/archive/carried-words.ts';
import { jobWithPhotos, photosHere } from '../../shop/archive/export-photos.ts';
import { takeWithPhotos } from '../../shop/archive/import-photos.ts';
import { exportJob, importJob, makeJob, openJob } from '../../shop/keep-job.ts';
import { listJobs } from '../../shop/list-jobs.ts';
import { counted } from '../../shop/phrase.ts';
import { steerWorking } from '../../shop/steer-working.ts';
import { about } from './about.ts';
import type { ArchiveDoors } from './archive-doors.ts';
import { type Doors, noAnswer, refuse, refused, withFile } from './doors.ts';
import { dimension, noSuchJob, sayKept } from './job-words.ts';
import { steerText } from './steer-text.ts';
import { table } from './table.ts';
import { type Told, withWorking } from './working-text.ts';

const examples = `
Examples:
  waywright job list
  waywright job new --template lathe-saddle --title "My saddle" --set length=480 --set across=300
  waywright job show demo-saddle
  waywright job export demo-saddle --out saddle.job.json
  waywright job export demo-saddle --photos --out saddle.zip
  waywright job import saddle.job.json
  waywright job import saddle.zip
  waywright job steer-input demo-saddle | waywright steer - --json
  waywright job rebuild --machine engine-lathe --title "The long lathe" --id lathe
  waywright job order lathe
  waywright job write lathe survey.json
Jobs are kept in ./workshop, or in the folder that WAYWRIGHT_DATA names.`;

const example = (line: string): string => `\nExample:\n  ${line}`;

const asJson = (value: unknown): string => JSON.stringify(value, null, 1);

/** `waywright job …`: the jobs kept in the workshop. */
export const registerJob = (archive: ArchiveDoors) => (program: Command, doors: Doors) =>
  register(program, doors, archive);

function register(program: Command, doors: Doors, archive: ArchiveDoors): void {
  const job = program.command('job').description(about.job).addHelpText('after', examples);
  const json = ['--json', 'one JSON document on standard output, and nothing else'] as const;
  const inch = ['--inch', 'answers in inches, thou and tenths'] as const;

  job
    .command('list')
    .description('every job, in the order they were made')
    .addHelpText('after', example('waywright job list --json'))
    .option(...json)
    .action(async (options: { json?: boolean }) => {
      const jobs = await doors.withStore(listJobs);
      if (options.json) return doors.say(asJson({ jobs }));
      if (jobs.length === 0) return doors.say('No jobs yet. Make one: waywright job new --help');
      doors.say(
        table(
          ['id', 'title', 'round', 'entries', 'last entry'],
          jobs.map((one) => [one.id, one.title, String(one.rounds), String(one.entries), one.changed]),
        ),
      );
    });

  job
    .command('new')
    .description('a job from a template and your own dimensions')
    .addHelpText(
      'after',
      example('waywright job new --template lathe-saddle --title "My saddle" --set length=480'),
    )
    .requiredOption('--template <id>', 'one of the machines that come with Waywright')
    .requiredOption('--title <text>', 'what you call it')
    .option('--id <id>', 'letters, figures, - and _; made up when left out')
    .option(
      '--set <key=value>',
      'a dimension; may be given again',
      (given: string, before: string[]) => [...before, given],
      [],
    )
    .option(...json)
    .action(
      async (options: { template: string; title: string; id?: string; set: string[]; json?: boolean }) => {
        const dimensions = Object.fromEntries(options.set.map((given) => dimension(doors, given)));
        try {
          const asked = newJob({
            id: options.id ?? randomUUID(),
            at: doors.now(),
            template: options.template,
            title: options.title,
            dimensions,
          });
          const kept = await doors.withStore((store) => makeJob(store, doors.templates(), asked));
          sayKept(doors, asked.id, kept, options.json, 'made');
        } catch (failure) {
          if (failure instanceof BadInput) refuse(doors, 'job new', failure);
          throw failure;
        }
      },
    );

  job
    .command('show')
    .description('where a job stands: how far out, where to scrape, what next')
    .addHelpText('after', example('waywright job show demo-saddle --working'))
    .argument('<id>')
    .option('--working', 'every number with its formula and what was put in, in µm and mm')
    .option(...inch)
    .option(...json)
    .action(async (id: string, options: Told & { inch?: boolean }) => {
      const system = options.inch ? 'inch' : 'metric';
      const open = (await doors.withStore((store) => openJob(store, id))) ?? noSuchJob(doors, id);
      const answer = await answerJob(open, doors.solve, system);
      const working =
        options.working && answer.steer?.ok ? steerWorking(steerInput(open), answer.steer) : undefined;
      if (options.json)
        return doors.say(
          asJson({ id, plan: open.plan, round: open.round, answer, ...(working ? { working } : {}) }),
        );
      const { demo, title } = open.plan;
      doors.say(
        `${title}${demo === undefined ? '' : ` (${demo})`}, round ${open.round}, ${open.seq} entries`,
      );
      if (!answer.steer) return doors.say('Nothing measured yet.');
      if (!answer.steer.ok) return noAnswer(doors, answer.steer, system);
      doors.say(`\n${withWorking(steerText(steerInput(open), answer.steer, system), working)}`);
    });

  job
    .command('steer-input')
    .description('what steer is asked for a job, as JSON')
    .addHelpText('after', example('waywright job steer-input demo-saddle | waywright steer - --json'))
    .argument('<id>')
    .action(async (id: string) => {
      const open = (await doors.withStore((store) => openJob(store, id))) ?? noSuchJob(doors, id);
      doors.say(asJson(writtenSteerInput(steerInput(open))));
    });

  job
    .command('export')
    .description('a job as one open file that loses nothing (docs/job-file.md)')
    .addHelpText('after', example('waywright job export demo-saddle --out saddle.job.json'))
    .argument('<id>')
    .option('--out <file>', 'written whole or not at all; standard output when left out')
    .option('--photos', 'with the photos of its prints, as one ZIP file; wants --out')
    .option('--partial', 'with --photos: leave out photos that are missing or damaged, and say which')
    .action(async (id: string, options: { out?: string; photos?: boolean; partial?: boolean }) => {
      if (options.photos) return exportWithPhotos(doors, archive, id, options);
      if (options.partial) {
        refused(doors, '--partial: without --photos; expected both');
      }
      const file = (await doors.withStore((store) => exportJob(store, id))) ?? noSuchJob(doors, id);
      const text = jobFileText(file);
      if (options.out === undefined) doors.say(text.trimEnd());
      else {
        await doors.writeText(options.out, text);
        doors.say(`${id} written to ${options.out}, ${file.entries.length} entries`);
      }
      const here = await doors.withStore(async (store) => photosHere(store, await archive.photos(), id));
      if (here?.photos.length)
        doors.complain(
          `${counted(here.photos.length, 'photo')} not in it: with --photos --out FILE.zip they come along`,
        );
    });

  job
    .command('import')
    .description('brings a job in from its file, with its photos where they were exported with it')
    .addHelpText('after', example('waywright job import saddle.job.json --as second-saddle'))
    .argument('<file>', '- reads standard input')
    .option('--as <id>', 'under another id, when another job has this one')
    .option(...json)
    .action(async (path: string, options: { as?: string; json?: boolean }) => {
      if (await archive.isArchive(path)) return importWithPhotos(doors, archive, path, options);
      await withFile(doors, path, async (text) => {
        const file = jobFile(parsedJson(text));
        const { as: id = file.id } = importQuery(options.as === undefined ? {} : { as: options.as });
        const kept = await doors.withStore((store) => importJob(store, { ...file, id }));
        sayKept(doors, id, kept, options.json, `taken in, ${file.entries.length} entries`);
      });
    });
}

async function exportWithPhotos(
  doors: Doors,
  archive: ArchiveDoors,
  id: string,
  { out, partial }: { readonly out?: string; readonly partial?: boolean },
): Promise<void> {
  if (out === undefined) {
    refused(doors, '--out: nothing; expected a file for the job and its photos, as --out saddle.zip');
  }
  try {
    const whole =
      (await doors.withStore(async (store) => jobWithPhotos(store, await archive.photos(), id, partial))) ??
      noSuchJob(doors, id);
    await archive.writePieces(out, archive.packed(whole.parts));
    doors.say(`${id} written to ${out}, ${whole.entries} entries and ${counted(whole.photos, 'photo')}`);
    for (const hash of whole.left_out) doors.complain(`left out, missing or damaged: photo ${hash}`);
  } catch (failure) {
    if (!(failure instanceof BadInput)) throw failure;
    refuse(doors, `job ${id}`, failure);
  }
}

async function importWithPhotos(
  doors: Doors,
  archive: ArchiveDoors,
  path: string,
  options: { readonly as?: string; readonly json?: boolean },
): Promise<void> {
  try {
    const open = await archive.open(path);
    try {
      const came = await doors.withStore(async (store) =>
        takeWithPhotos(store, await archive.photos(), open.files, options.as),
      );
      const { id, kept, entries, photos } = came;
      if (options.json && kept.kind === 'kept')
        return doors.say(asJson({ id, entries: kept.seq, again: kept.again, photos }));
      sayKept(doors, id, kept, false, `taken in, ${entries} entries`);
      const words = photosTakenWords(photos);
      if (words) doors.say(words);
    } finally {
      await open.close();
    }
  } catch (failure) {
    if (!(failure instanceof BadInput)) throw failure;
    refuse(doors, path, failure);
  }
}
