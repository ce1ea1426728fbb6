// What is done on the sheets that a step's page opens: a survey, an axis, heights, a gib, a sum, the chart.
import { split, workingLines } from './told.mjs';

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

/** A level stepped along the way there and back: as found, and once it is scraped, against the shop's own 20 µm. */
export async function survey({ shop, machine, tell, its }, step) {
  const long = its.ways_mm?.[step.id] ?? its.ways_mm?.usual ?? 1000;
  const read = async (words, asked) => {
    const { said, working } = split(await shop.saying('line', asked, '--working'));
    tell(`${words}: ${said[0]}`);
    for (const line of working) tell(line);
  };
  await read('as found', machine.way(long, (long / 1000) * (-38 + machine.normal(0, 6))));
  if (step.id !== 'survey')
    await read('scraped and read again', { ...machine.way(long, (long / 1000) * 6), limit_um: 20 });
}

/** A bar of 40 mm, 320 mm out: its own error turns with it, its sag is taken out by the tool. */
function barReadings(machine, done) {
  // The end of a solid bar of 40 mm hangs 4.9 µm lower, 320 mm out.
  const truth = done ? { up: 8 - 4.9, sideways: 7 } : { up: -24 - 4.9, sideways: -17 };
  return [
    { side: 'top', near: machine.turned(0, 2), far: machine.turned(truth.up, 11) },
    { side: 'front', near: machine.turned(0, 2), far: machine.turned(truth.sideways, 9) },
  ];
}

/** The axis as found, or as it is when the step's work is `done`: then its results go to the chart. */
export async function axis({ shop, machine, tell, lines }, step, done) {
  const tested = (words) => step.proofs.map((one) => one.test).find((id) => id?.endsWith(words));
  const ids = { up: tested('-up'), sideways: tested('-sideways') };
  const centres = done ? tested('centre-height') : undefined;
  const asked = {
    bar: { diameter_mm: 40, out_mm: 320, near_mm: 20, far_mm: 320, reading_sd_um: 1 },
    readings: barReadings(machine, done),
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
  const answer = await shop.asking('axis', asked, '--working');
  for (const one of [...answer.axes, ...answer.centres])
    tell(`${done ? 'done and read again' : 'as found'}: ${one.sentence}`);
  for (const line of workingLines(answer.working)) tell(line);
  const taken = { kind: 'axis taken', of: step.id, asked };
  if (!done) return [taken];
  const results = answer.axes.flatMap((one) => {
    const line = lines.find((other) => other.id === ids[one.plane]);
    if (!line) return [];
    const { um: value_um, doubt_um, over_mm } = one.over;
    return [{ test: line.id, result: { value_um, doubt_um, over_mm } }];
  });
  if (centres)
    results.push({
      test: centres,
      result: { value_um: answer.centres[0].um, doubt_um: 2 * answer.centres[0].sd_um },
    });
  return [taken, ...results.map((one) => ({ kind: 'result taken', when: 'final', ...one }))];
}

/** What is known of the heights at this step, and what the tool makes of it. */
export async function heights({ shop, job, tell, its }, step) {
  const known = its.heights?.[step.id];
  if (!known) return;
  await shop.write(job, [{ kind: 'heights set', heights: known }]);
  const answer = await shop.ask('job', 'heights', job, '--working');
  for (const one of answer.heights.filter((height) => height.verdict !== 'not measured'))
    tell(`${one.sentence} ${one.verdict}.`);
  for (const liner of answer.liners)
    tell(
      `liner ${liner.sheet_mm} mm: mill ${liner.pads.map((pad) => `${pad.mill_mm.toFixed(3)} mm under the ${pad.pad}`).join(', ')}; scraping may take ${liner.stock_um} µm`,
    );
  for (const line of workingLines(answer.working)) tell(line);
}

/** Keepers, a gib or a dovetail: as found, and once it is set or scraped. */
export async function gib({ shop, machine, tell }, step, opens) {
  const read = async (words, asked) => {
    const { said, working } = split(await shop.saying('gib', asked, '--working'));
    for (const line of said) tell(`${words}: ${line}`);
    for (const line of working) tell(line);
  };
  if (/keeper/i.test(opens.what)) {
    const keeper = (low) => ({
      keepers: [
        {
          name: 'front keeper',
          stations_mm: [0, 250, 500, 750],
          clearance_um: [1, 3, 0, 2].map((um) => machine.read(low + um)),
          reading_sd_um: 1,
        },
      ],
    });
    await read('as found', keeper(58));
    return read('scraped and read again', keeper(21));
  }
  if (step.bench || /play/.test(opens.what)) {
    const found = (play) => ({
      gib: {
        stations_mm: [0, 110, 220, 330],
        thick_mm: [5.4, 7.2333, 9.0667, 10.9].map((mm) => Number((mm + machine.normal(0, 0.001)).toFixed(4))),
      },
      play: {
        how: 'across',
        thick_end_um: machine.read(play),
        thin_end_um: machine.read(play + 1),
        screw_mm: 1.5,
        in_left_mm: 12,
      },
    });
    await read('as found', found(34));
    return read('pushed in and read again', found(17));
  }
  // Over two rolls, at four places: the far end wider by so much in all; read three times when it is to be proven.
  const rolls = (wider_um, reading_sd_um) => ({
    rolls: {
      kind: 'male',
      roll_mm: 10,
      stations_mm: [0, 100, 200, 300],
      read_mm: [0, 1, 2, 3].map((k) =>
        Number((157.3205 + (wider_um * k) / 3000 + machine.normal(0, reading_sd_um / 1000)).toFixed(4)),
      ),
      reading_sd_um,
    },
  });
  await read('as found', rolls(18, 1));
  return read('scraped and read again', rolls(1, 0.6));
}

/** The shop's sum that the page opens, with the numbers of the tool's own example. */
export async function sum({ shop, tell }, _step, opens) {
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
  for (const result of answer.results) {
    tell(`${answer.title} (its own example): ${result.label}: ${result.text}`);
    tell(`  · ${result.formula} (source: ${answer.source.text})`);
    tell(`      ${result.working}`);
  }
}

/** Every test as found, or what is still wanting at the end; one is measured too coarsely first, and then as the tool asks. */
export async function chart({ shop, machine, job, tell, lines, finals, readAgain }, step) {
  const first = step.id === 'survey';
  const left = first ? lines : lines.filter((line) => !finals.has(line.id));
  const rough = first ? undefined : left.find((line) => line.low !== undefined);
  const taken = (line, result) => ({
    kind: 'result taken',
    test: line.id,
    when: first ? 'first' : 'final',
    result,
  });
  const stands = async () => {
    const now = await shop.ask('chart', job, '--working');
    tell(now.sentence);
    return now;
  };
  await shop.write(
    job,
    left.map((line) => taken(line, first ? asFound(machine, line) : finished(machine, line, line === rough))),
  );
  let now = await stands();
  if (rough) {
    for (const one of now.remaining) tell(`still to be proven: ${one.name}: ${one.text}`);
    await shop.write(job, [taken(rough, finished(machine, rough))]);
    now = await stands();
    // What a bench left unproven is read again there, as the chart says, and as long as it says that it helps.
    for (let go = 0; go < 8 && now.remaining.length > 0; go++) {
      const open = listed(now).filter((line) => line.verdict === 'not proven' && line.bench);
      for (const id of new Set(open.map((line) => line.bench.job))) {
        tell(
          `read again on the bench ${id}: ${open
            .filter((line) => line.bench.job === id)
            .map((line) => line.name)
            .join(', ')}`,
        );
        await readAgain(id);
      }
      if (open.length === 0) break;
      now = await stands();
    }
  }
  for (const line of workingLines(now.working)) tell(line);
}
