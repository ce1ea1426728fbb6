// Writes the rounds of docs/guided-saddle.md anew: an invented saddle, simulated, its truth hidden from the planner.
// Usage: node examples/saddle/make.mjs [seed]
import { readFileSync, writeFileSync } from 'node:fs';
import { runnerImport } from 'vite';

const seed = Number(process.argv[2] ?? 3);
const load = async (file) => (await runnerImport(file)).module;
const { plannedJob, templateInput } = await load('./src/contract/template.ts');
const { byPad } = await load('./src/core/body/slide.ts');
const { foldJob } = await load('./src/core/ledger/job.ts');
const { steerInput, sweepStops } = await load('./src/core/ledger/steer-input.ts');
const { practiceMachine } = await load('./src/core/practice/machine.ts');
const { typedDeed } = await load('./src/shop/typed-deed.ts');
const { steer } = await load('./src/shop/steer.ts');
const { solveWithHighs } = await load('./src/adapters/solver/highs.ts');

const template = templateInput(JSON.parse(readFileSync('machines/lathe-saddle.json', 'utf8')));
const plan = plannedJob(template, { length: 480, across: 300 }, 'My saddle');
const [square, across, along] = plan.setups;
const machine = practiceMachine(
  {
    slide: plan.slide,
    features: plan.features,
    sweeps: [{ ...square, points_mm: sweepStops(square), readings_um: Array(square.points).fill(0) }],
    levels: [across, along].map((level) => ({ ...level, reading_urad: 0 })),
    weight: { force_N: 1100, at_mm: [-12, 125, 120], direction: [0, 0, -1], stiffness_N_per_mm3: 100 },
    removal: { liner: { median_um: 9, log_sd: 0.12 } },
    film_um: plan.film_um ?? 3,
  },
  seed,
);
const signed = (value, digits) =>
  `${value > 0 ? '+' : ''}${(Math.round(value * 10 ** digits) / 10 ** digits + 0).toFixed(digits)}`;
const entries = [{ kind: 'job made', plan, id: 'made', seq: 1, at: '2026-03-02T07:40:00Z' }];
const keep = (deeds) => {
  for (const deed of deeds)
    entries.push({
      ...typedDeed(plan, deed, 'metric'),
      id: `e${entries.length}`,
      seq: entries.length + 1,
      at: '2026-03-02T07:40:00Z',
    });
};
/** One deed a line: short enough to read, and to write by hand. */
const write = (name, deeds) => {
  keep(deeds);
  writeFileSync(
    `examples/saddle/${name}.json`,
    `[\n${deeds.map((deed) => ` ${JSON.stringify(deed)}`).join(',\n')}\n]\n`,
  );
};

for (let round = 1; round <= 12; round++) {
  const seen = machine.measure();
  const record = { push: 'climbed' };
  const [sweep] = seen.sweeps;
  const print = machine.print();
  write(`round-${round}`, [
    {
      kind: 'sweep taken',
      round,
      setup: square.id,
      record,
      readings: sweep.readings_um.map((um) => signed(um - sweep.readings_um[0], 0)),
    },
    ...[across, along].map((level, k) => ({
      kind: 'level read',
      round,
      setup: level.id,
      record: {},
      reading: `${signed(Math.round(seen.levels[k].reading_urad / 5) * 0.005, 3)} mm/m`,
    })),
    {
      kind: 'print read',
      round,
      share: Object.fromEntries(
        Object.entries(print).map(([pad, zones]) => [pad, zones.map((b) => Math.round(b * 20) / 20)]),
      ),
    },
  ]);
  const answer = await steer(steerInput(foldJob(entries)), solveWithHighs);
  if (!answer.ok) throw new Error(answer.text);
  const told = answer.estimate.features.map(
    (one) => `${one.name} ${one.value.toFixed(0)} ± ${(2 * one.sd).toFixed(0)}`,
  );
  console.log(`round ${round}: ${answer.plan.action}; ${told.join(', ')} µrad`);
  if (answer.plan.action === 'stop') break;
  const made = answer.plan.zones.map((zone) => zone.passes_now);
  const spot = answer.plan.action === 'spot';
  write(`scraped-${round}`, [
    { kind: 'part turned over', round, how: 'end over end' },
    ...Array.from({ length: Math.max(...made) }, (_, k) => ({
      kind: 'pass made',
      round,
      pass: k + 1,
      ...(spot ? { spot } : {}),
      zones: byPad(
        plan.slide,
        made.map((passes) => (passes > k ? 1 : 0)),
      ),
    })),
    { kind: 'round closed', round },
  ]);
  if (spot) machine.spot(made);
  else machine.scrape(made);
}
