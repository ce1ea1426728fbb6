// What is done at a step, by what its page opens: a survey, an axis, heights, a gib, a sum, the chart; then its bench.
import { join } from 'node:path';

const listed = (chart) => chart.groups.flatMap((group) => group.lines);
const span = (line) =>
  line.low === undefined ? [0, line.high] : line.high === undefined ? [line.low, 0] : [line.low, line.high];

/** As somebody finds a worn machine: beyond the limits, more often than not. */
function asFound(machine, line) {
  const [low, high] = span(line);
  const width = high - low;
  return {
    value_um: machine.read(high + (0.2 + machine.even()) * width, 0.05 * width),
    doubt_um: 0.15 * width,
  };
}

/** A finished machine: inside, and measured well enough to say so; `rough`: measured once with too coarse an instrument. */
function finished(machine, line, rough = false) {
  const [low, high] = span(line);
  const width = high - low;
  const at = line.low === undefined ? 0.35 : 0.5;
  return {
    value_um: machine.read(low + at * width, 0.05 * width),
    doubt_um: Number(((rough ? 0.7 : 0.12) * width).toFixed(2)),
    readings: rough ? 1 : 3,
    instrument: 'lever indicator (invented)',
  };
}

/** A level stepped along the way there and back: as found, and once it is scraped. Bands as the limits of its tests have them. */
async function survey({ shop, machine, tell }, step) {
  const said = async (asked) => (await shop.saying('line', asked)).split('\n')[0];
  tell(`as found: ${await said(machine.way(1000, -38 + machine.normal(0, 6)))}`);
  if (step.id !== 'survey')
    tell(`scraped and read again: ${await said({ ...machine.way(1000, 6), limit_um: 20 })}`);
}

/** A bar of 40 mm, 320 mm out: its own error turns with it, its sag is taken out by the tool. */
async function axis({ shop, machine, tell, lines }, step) {
  const tested = (words) => step.proofs.map((one) => one.test).find((id) => id?.endsWith(words));
  const ids = { up: tested('-up'), sideways: tested('-sideways') };
  const centres = tested('centre-height');
  // The end of a solid bar of 40 mm hangs 4.9 µm lower, 320 mm out.
  const truth = { up: 8 - 4.9, sideways: 7 };
  const asked = {
    bar: { diameter_mm: 40, out_mm: 320, near_mm: 20, far_mm: 320, reading_sd_um: 1 },
    readings: [
      { side: 'top', near: machine.turned(0, 2), far: machine.turned(truth.up, 11) },
      { side: 'front', near: machine.turned(0, 2), far: machine.turned(truth.sideways, 9) },
    ],
    bands: {
      up: { low_um: 0, high_um: 20, over_mm: 300 },
      sideways: { low_um: 0, high_um: 15, over_mm: 300 },
    },
    ...(centres
      ? {
          centres: [
            {
              kind: 'two bars',
              plane: 'up',
              first_um: machine.read(17),
              exchanged_um: machine.read(21),
              reading_sd_um: 1,
              low_um: 0,
              high_um: 40,
              aim_um: 20,
            },
          ],
        }
      : {}),
  };
  const answer = await shop.asking('axis', asked);
  for (const one of [...answer.axes, ...answer.centres]) tell(one.sentence);
  const results = answer.axes.flatMap((one) => {
    const line = lines.find((other) => other.id === ids[one.plane]);
    return line
      ? [
          {
            test: line.id,
            result: { value_um: one.over.um, doubt_um: one.over.doubt_um, over_mm: one.over.over_mm },
          },
        ]
      : [];
  });
  if (centres)
    results.push({
      test: centres,
      result: { value_um: answer.centres[0].um, doubt_um: 2 * answer.centres[0].sd_um },
    });
  return [
    { kind: 'axis taken', of: step.id, asked },
    ...results.map((one) => ({ kind: 'result taken', when: 'final', ...one })),
  ];
}

async function heights({ shop, job, tell, its }, step) {
  const known = its.heights?.[step.id];
  if (!known) return;
  await shop.write(job, [{ kind: 'heights set', heights: known }]);
  const answer = await shop.ask('job', 'heights', job);
  for (const one of answer.heights.filter((height) => height.verdict !== 'not measured'))
    tell(`${one.sentence} ${one.verdict}.`);
  for (const liner of answer.liners)
    tell(
      `liner ${liner.sheet_mm} mm: mill ${liner.pads.map((pad) => `${pad.mill_mm.toFixed(3)} mm under the ${pad.pad}`).join(', ')}; scraping may take ${liner.stock_um} µm`,
    );
}

async function gib({ shop, machine, tell }, step, opens) {
  const told = async (asked) => {
    for (const line of (await shop.saying('gib', asked)).split('\n')) tell(line);
  };
  if (/keeper/i.test(opens.what))
    return told({
      keepers: [
        {
          name: 'front keeper',
          stations_mm: [0, 250, 500, 750],
          clearance_um: [22, 24, 21, 23].map((um) => machine.read(um)),
          reading_sd_um: 1,
        },
      ],
    });
  if (step.bench)
    return told({
      gib: {
        stations_mm: [0, 110, 220, 330],
        thick_mm: [5.4, 7.2333, 9.0667, 10.9].map((mm) => Number((mm + machine.normal(0, 0.001)).toFixed(4))),
      },
      play: {
        how: 'across',
        thick_end_um: machine.read(34),
        thin_end_um: machine.read(35),
        screw_mm: 1.5,
        in_left_mm: 12,
      },
    });
  return told({
    rolls: {
      kind: 'male',
      roll_mm: 10,
      stations_mm: [0, 100, 200, 300],
      read_mm: [0, 1, 2, 3].map((k) => Number((157.3205 + 0.001 * k + machine.normal(0, 0.001)).toFixed(4))),
    },
  });
}

async function sum({ shop, tell }, _step, opens) {
  const named = await shop.say(['sums', opens.sum]);
  // The tool's own example of the sum, asked as it says it is asked.
  const words = [
    ...named
      .split('\n')
      .at(-1)
      .matchAll(/(\w+)=("[^"]*"|\S+)/g),
  ];
  const values = words.map(([, key, value]) => `${key}=${value.replaceAll('"', '')}`);
  const answer = await shop.ask('sums', opens.sum, ...values);
  for (const result of answer.results) tell(`${answer.title}: ${result.working}`);
}

async function chart({ shop, machine, job, tell, lines, finals }, step) {
  const first = step.id === 'survey';
  const left = first ? lines : lines.filter((line) => !finals.has(line.id));
  const rough = first ? undefined : left.find((line) => line.low !== undefined);
  const taken = (line, result) => ({
    kind: 'result taken',
    test: line.id,
    when: first ? 'first' : 'final',
    result,
  });
  const deeds = left.map((line) =>
    taken(line, first ? asFound(machine, line) : finished(machine, line, line === rough)),
  );
  await shop.write(job, deeds);
  const now = await shop.ask('chart', job);
  tell(now.sentence);
  if (!rough) return;
  // One was measured too coarsely: the tool says which and what would settle it; it is measured again.
  tell(`still to be proven: ${now.remaining.map((one) => `${one.name} (${one.text})`).join('; ')}`);
  await shop.write(job, [taken(rough, finished(machine, rough))]);
  tell((await shop.ask('chart', job)).sentence);
}

const handlers = { survey, axis, gib, sum, chart };

/** Rounds on the bench of a step, until the tool says stop. */
async function bench({ shop, machine, job, tell, its }, step, own) {
  const { job: id } = await shop.ask('job', 'bench', job, step.id, '--id', `${job}-${step.id}`);
  const { plan } = await shop.ask('job', 'show', id);
  for (const limit of plan.sink ?? []) tell(`may sink ${limit.most_um.toFixed(0)} µm: ${limit.name}`);
  for (const pad of plan.slide.pads)
    if (pad.stock_um > 0) tell(`may lose ${pad.stock_um.toFixed(0)} µm: ${pad.name}`);
  const part = machine.bench(plan, own, its.stands_um?.[step.id]);
  let deeds = [];
  for (let round = 1; round <= 25; round++) {
    const { answer } = await shop.write(id, [...deeds, ...part.round(round)], true);
    if (!answer.steer.ok) throw new Error(`${step.id}, round ${round}: ${answer.steer.text}`);
    const { estimate, plan: next } = answer.steer;
    const said = estimate.features
      .map(
        (one) =>
          `${one.name} ${one.value.toFixed(1)} ± ${(2 * one.sd).toFixed(1)} (${(100 * one.chance_in_band).toFixed(0)} in 100)`,
      )
      .join('; ');
    const passes = next.zones.map((zone) => zone.passes_now);
    const share = next.bearing.share === undefined ? '' : `, ${(100 * next.bearing.share).toFixed(0)} % blue`;
    tell(
      `round ${round}: ${said}${share}: ${next.action}${next.action === 'stop' ? '' : `, ${passes.reduce((all, one) => all + one, 0)} passes on zones`}`,
    );
    if (next.action === 'stop') {
      await shop.write(id, [{ kind: 'stop signed', round }]);
      return round;
    }
    const spot = next.action === 'spot';
    const pads = [...new Set(next.zones.map((zone) => zone.pad))];
    deeds = [
      { kind: 'part turned over', round, how: 'end over end' },
      ...Array.from({ length: Math.max(...passes, 0) }, (_, k) => ({
        kind: 'pass made',
        round,
        pass: k + 1,
        ...(spot ? { spot } : {}),
        zones: Object.fromEntries(
          pads.map((pad) => [
            pad,
            next.zones.filter((zone) => zone.pad === pad).map((zone) => (zone.passes_now > k ? 1 : 0)),
          ]),
        ),
      })),
      { kind: 'round closed', round },
    ];
    part.scrape(passes, spot);
  }
  throw new Error(`${step.id}: not done after 25 rounds`);
}

/** One whole machine from an empty start to its final chart. `tell` hears every line. */
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
  const at = { shop, machine, job, lines, finals, its };
  let rounds = 0;
  let steps = 0;
  for (;;) {
    const { steps: all, ready, text } = await shop.ask('job', 'order', job);
    tell(text);
    if (ready.length === 0) break;
    for (const name of ready) {
      const step = all.find((one) => one.id === name);
      const own = (line) => tell(`   ${line}`);
      tell(`${step.title} (${step.id})`);
      const deeds = [];
      await heights({ ...at, tell: own }, step);
      for (const opens of step.opens ?? [])
        deeds.push(...((await handlers[opens.screen]?.({ ...at, tell: own }, step, opens)) ?? []));
      if (step.bench) rounds += await bench({ ...at, tell: own }, step, its.seed + steps);
      for (const deed of deeds) if (deed.kind === 'result taken') finals.add(deed.test);
      await shop.write(job, [
        ...deeds,
        {
          kind: 'step told',
          step: step.id,
          what: 'done',
          hours: Math.max(1, Math.round(machine.read(step.hours_left, 1))),
        },
      ]);
      steps++;
      if (steps === limit) return { steps, rounds };
    }
  }
  const pdf = join(shop.folder, 'chart.pdf');
  tell('');
  tell(await shop.say(['chart', job, '--pdf', pdf]));
  const { tally } = await shop.ask('chart', job);
  return { steps, rounds, tally, pdf };
}
