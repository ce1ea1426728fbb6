import type { Command } from 'commander';
import type { Machine } from '../../core/order/machine.ts';
import { about, type VerbName } from './about.ts';
import type { ArchiveDoors } from './archive-doors.ts';
import type { ChartDoors } from './chart.ts';
import type { KeepingDoors } from './keeping.ts';
import type { PictureDoors } from './picture-doors.ts';
import type { Register } from './run.ts';
import type { StartServer } from './serve.ts';

/** What single verbs need of the world, beside the usual doors. */
export interface MoreDoors {
  readonly archive: ArchiveDoors;
  readonly picture: PictureDoors;
  readonly chart: ChartDoors;
  readonly machines: () => readonly Machine[];
  readonly serve: StartServer;
  readonly keeping: KeepingDoors;
}

const isVerb = (word: string | undefined): word is VerbName =>
  word !== undefined && Object.hasOwn(about, word);

/** The verb that these words call, or ask help about; undefined when there is none. */
export function verbCalled(words: readonly string[]): VerbName | undefined {
  const word = words[0] === 'help' ? words[1] : words[0];
  return isVerb(word) ? word : undefined;
}

/** Every verb by its name alone: what --help shows, and what a mistyped word is held against. */
export const everyVerbNamed = (program: Command): void => {
  for (const [name, text] of Object.entries(about)) program.command(name).description(text);
};

const keeping = async (more: MoreDoors) => (await import('./keeping.ts')).registerKeeping(more.keeping);

const loads: Readonly<Record<VerbName, (more: MoreDoors) => Promise<Register>>> = {
  steer: async () => (await import('./steer.ts')).registerSteer,
  rest: async () => (await import('./rest.ts')).registerRest,
  site: async () => (await import('./site.ts')).registerSite,
  parts: async () => (await import('./parts.ts')).registerParts,
  line: async () => (await import('./line.ts')).registerLine,
  plate: async () => (await import('./plate.ts')).registerPlate,
  practise: async () => (await import('./practise.ts')).registerPractise,
  job: async ({ archive, machines, chart }) => {
    const { registerJob } = await import('./job.ts');
    const { registerJobRebuild } = await import('./job-rebuild.ts');
    const { registerJobPractise } = await import('./job-practise.ts');
    const { testLists } = chart;
    return (program, doors) => {
      registerJob(archive)(program, doors);
      registerJobRebuild({ machines, testLists })(program, doors);
      registerJobPractise(program, doors);
    };
  },
  print: async ({ picture }) => (await import('./print.ts')).registerPrint(picture),
  card: async ({ picture: { writeBytes }, chart: { press } }) =>
    (await import('./card.ts')).registerCard({ writeBytes, press }),
  chart: async ({ chart }) => (await import('./chart.ts')).registerChart(chart),
  sums: async () => (await import('./sums.ts')).registerSums,
  kit: async () => (await import('./kit.ts')).registerKit,
  order: async (more) => (await import('./order.ts')).registerOrder(more),
  heights: async (more) => (await import('./heights.ts')).registerHeights(more),
  axis: async (more) => (await import('./order-axis.ts')).registerAxis(more),
  gib: async (more) => (await import('./gib.ts')).registerGib(more),
  serve: async ({ serve }) => (await import('./serve.ts')).registerServe(serve),
  move: keeping,
  backup: keeping,
  restore: keeping,
  workshop: keeping,
};

/** Reads one verb from the disk, and nothing of the others: most of a short call's time would go there. */
export const loadVerb = (name: VerbName, more: MoreDoors): Promise<Register> => loads[name](more);
