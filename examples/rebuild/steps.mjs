// One whole machine, step after step in the order that the tool gives: its sheets, its bench, its sheets again.
import { join } from 'node:path';
import { bench } from './bench.mjs';
import { axis, chart, gib, heights, sum, survey } from './sheets.mjs';
import { split } from './told.mjs';

const listed = (chart) => chart.groups.flatMap((group) => group.lines);
const handlers = { survey, gib, sum, chart };

/** One step: what its page opens as found, its bench until the tool says stop, and its axis when that is done. */
async function doStep(at, step, own) {
  const deeds = [];
  await heights(at, step);
  for (const opens of step.opens ?? []) {
    if (opens.screen === 'axis') deeds.push(...(await axis(at, step, false)));
    else await handlers[opens.screen]?.(at, step, opens);
  }
  const worked = step.bench ? await bench(at, step, own) : undefined;
  // As found is all that a survey does.
  if (step.id !== 'survey' && step.opens?.some((opens) => opens.screen === 'axis'))
    deeds.push(...(await axis(at, step, true)));
  return { deeds, worked };
}

/**
 * One whole machine from an empty start to its final chart. `tell` hears every line.
 * @returns steps done, rounds and passes on benches, the chart's tally, and where its report, table and drawing lie
 */
export async function rebuild({ shop, machine, id, its, tell, limit }) {
  const job = 'invented';
  await shop.say(['job', 'rebuild', '--machine', id, '--title', its.title, '--id', job]);
  await shop.write(job, [
    {
      kind: 'note',
      text: 'Invented: a simulated machine, workshop and person. Nothing here was measured on metal.',
    },
    {
      kind: 'chart set',
      chart: { list: id, class: its.class, note: 'Invented: nothing was measured on metal.' },
    },
  ]);
  // Lines of the machine's list; the job's own come from its bench.
  const lines = listed(await shop.ask('chart', job)).filter((line) => !line.id.startsWith('job:'));
  const finals = new Set();
  const benches = new Map();
  // The job's own bench is told under the job's own name too.
  const readAgain = (name) => (benches.get(name) ?? benches.values().next().value)();
  const at = { shop, machine, job, lines, finals, its, readAgain };
  let [rounds, passes, steps] = [0, 0, 0];
  for (;;) {
    const { steps: all, ready, text } = await shop.ask('job', 'order', job);
    tell(text);
    if (ready.length === 0) break;
    for (const name of ready) {
      const step = all.find((one) => one.id === name);
      tell(`${step.title} (${step.id})`);
      const { deeds, worked } = await doStep(
        { ...at, tell: (line) => tell(`   ${line}`) },
        step,
        its.seed + steps,
      );
      if (worked) {
        rounds += worked.rounds;
        passes += worked.passes;
        benches.set(worked.id, worked.again);
      }
      for (const deed of deeds) if (deed.kind === 'result taken') finals.add(deed.test);
      const hours = Math.max(1, Math.round(machine.read(step.hours_left, 1)));
      await shop.write(job, [...deeds, { kind: 'step told', step: step.id, what: 'done', hours }]);
      tell(`   done, ${hours} h`);
      steps++;
      if (steps === limit) return { steps, rounds, passes };
    }
  }
  for (const line of split(await shop.say(['job', 'order', job, '--working'])).working) tell(`   ${line}`);
  const file = (kind) => join(shop.folder, `chart.${kind}`);
  const files = { pdf: file('pdf'), csv: file('csv'), svg: file('svg') };
  tell('');
  tell(await shop.say(['chart', job, '--pdf', files.pdf, '--csv', files.csv, '--svg', files.svg]));
  const { tally } = await shop.ask('chart', job);
  return { steps, rounds, passes, tally, ...files };
}
