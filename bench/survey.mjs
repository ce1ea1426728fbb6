import loadHighs from 'highs';
import { seededRandom } from '../dist/core/math/random.js';
import { lineZone } from '../dist/core/survey/line-zone.js';
import { planeZone } from '../dist/core/survey/plane-zone.js';
import { summary, timed } from './clock.mjs';

const many = 10_000;

/** A worn table of 900 × 600 mm: bowl and twist of some µm, noise of 0.7 µm rounded to 0.001; a grid, then strewn points. */
function worn(seed, strewn) {
  const random = seededRandom(seed);
  const x_mm = new Float64Array(many);
  const y_mm = new Float64Array(many);
  const z_um = new Float64Array(many);
  for (let i = 0; i < many; i++) {
    const u = strewn ? random.even() : (i % 100) / 99;
    const v = strewn ? random.even() : Math.floor(i / 100) / 99;
    x_mm[i] = 900 * u;
    y_mm[i] = 600 * v;
    const z = 8 * u + 12 * (u - 0.5) ** 2 - 6 * (u - 0.5) * (v - 0.5) - 5 * (v - 0.4) ** 2;
    z_um[i] = Math.round(1000 * (z + random.normal(0, 0.7))) / 1000;
  }
  return { x_mm, y_mm, z_um };
}

const sets = [1, 2, 3].flatMap((seed) => [worn(seed, false), worn(seed, true)]);
const signed = (value, name) => `${value < 0 ? '-' : '+'} ${Math.abs(value)} ${name}`;

/** least hi − lo, two rows a point. */
function asRows({ x_mm, y_mm, z_um }) {
  const rows = [];
  for (let i = 0; i < many; i++) {
    const tilt = `${signed(x_mm[i] / 1000, 'a')} ${signed(y_mm[i] / 1000, 'b')}`;
    rows.push(` h${i}: hi ${tilt} >= ${z_um[i]}`, ` l${i}: lo ${tilt} <= ${z_um[i]}`);
  }
  const free = ['hi', 'lo', 'a', 'b'].map((name) => ` ${name} free`);
  return ['Minimize', ' cost: hi - lo', 'Subject To', ...rows, 'Bounds', ...free, 'End', ''].join('\n');
}

/** The same program's dual, two columns a point and four rows: most Σ λ z − Σ μ z. */
function asColumns({ x_mm, y_mm, z_um }) {
  const sum = (of) => {
    const terms = [];
    for (let i = 0; i < many; i++) terms.push(of(i));
    return terms.join('\n  ');
  };
  const moment = (places) =>
    sum((i) => `${signed(places[i] / 1000, `h${i}`)} ${signed(-places[i] / 1000, `l${i}`)}`);
  return [
    'Maximize',
    ` cost: ${sum((i) => `${signed(z_um[i], `h${i}`)} ${signed(-z_um[i], `l${i}`)}`)}`,
    'Subject To',
    ` highs: ${sum((i) => `+ h${i}`)} = 1`,
    ` lows: ${sum((i) => `+ l${i}`)} = 1`,
    ` x: ${moment(x_mm)} = 0`,
    ` y: ${moment(y_mm)} = 0`,
    'End',
    '',
  ].join('\n');
}

/** HiGHS' own run time as it logs it, without reading the program's text: the least that can be asked of it. */
async function highsRuns() {
  let log = [];
  const highs = await loadHighs({ print: (text) => log.push(text) });
  return (text) => {
    log = [];
    const started = performance.now();
    const answer = highs.solve(text, { output_flag: true });
    const whole = performance.now() - started;
    const said = /HiGHS run time\s*:\s*([\d.]+)/.exec(log.join('\n'));
    return { width: answer.ObjectiveValue, whole, own: said ? 1000 * Number(said[1]) : undefined };
  };
}

export async function surveyTiming(quick) {
  const seconds = quick ? 0.2 : 2;
  const solve = await highsRuns();
  const asked = quick ? sets.slice(0, 2) : sets;
  const runs = asked.flatMap((set) => {
    const { width_um } = planeZone(set);
    const both = [solve(asRows(set)), solve(asColumns(set))];
    for (const { width } of both)
      if (Math.abs(width - width_um) > 1e-5) throw new Error(`minimum zone ${width_um}, HiGHS ${width}`);
    // Whichever form it solves sooner counts.
    const times = both.map((run) => run.own ?? run.whole);
    return [{ own: Math.min(...times), whole: Math.min(...both.map((run) => run.whole)) }];
  });
  let turn = 0;
  const plane = await timed(() => planeZone(sets[turn++ % sets.length]), { seconds, warm: 200 });
  const x = Array.from({ length: many }, (_, i) => i);
  const h = Array.from(sets[1].z_um);
  const line = await timed(() => lineZone(x, h), { seconds: seconds / 2, warm: 50 });
  return [
    {
      what: 'minimum zone, 10 000 points',
      aim: 'under 3 ms, a tenth',
      times: plane,
      highs: summary(runs.map((run) => run.whole)),
      reference: { name: 'HiGHS, same LP, own time', times: summary(runs.map((run) => run.own)) },
    },
    { what: 'minimum zone, line of 10 000', aim: 'under 3 ms', times: line },
  ];
}
