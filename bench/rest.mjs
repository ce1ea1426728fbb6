import { displacementRow } from '../dist/core/body/displacement.js';
import { zonesOf } from '../dist/core/body/slide.js';
import { seededRandom } from '../dist/core/math/random.js';
import { wrenchOf } from '../dist/core/rest/load.js';
import { rest } from '../dist/core/rest/rest.js';
import { timed } from './clock.mjs';
import { highs } from './highs.mjs';
import { benchInputs, seeds } from './slide.mjs';

const inputs = (await benchInputs(1)).map(({ slide }, k) => {
  const random = seededRandom(seeds[k]);
  const gaps_um = slide.pads.map((pad) =>
    Array.from({ length: pad.zones }, () => Math.abs(random.normal(8, 7))),
  );
  const load = { force_N: 1500, at_mm: [random.normal(0, 20), 130, 120], direction: [0, 0, -1] };
  return { slide, gaps_um, load, stiffness_N_per_mm3: 50, film_um: 3 };
});

/**
 * The same rest as a quadratic program for a general solver: least Σ ½ K s² − force·q with s ≥ −(gap + row·q), s ≥ 0, over
 * the five directions across the travel (scaled so that µm and µrad are of a size).
 */
export function quadraticText(input) {
  const zones = zonesOf(input.slide);
  const gaps = input.gaps_um.flat();
  const size = [1, 1, 10, 10, 10];
  const held = (row) => row.slice(1).map((part, k) => part * size[k]);
  const sum = (parts) => parts.map(([c, name]) => `${c < 0 ? '-' : '+'} ${Math.abs(c)} ${name}`).join('\n ');
  const force = held(wrenchOf(input.load));
  const linear = sum(force.map((part, k) => [-part, `q${k}`]));
  const square = sum(
    zones.map((zone, z) => [(input.stiffness_N_per_mm3 * zone.area_mm2) / 1000, `s${z} ^2`]),
  );
  const rows = zones.map((zone, z) => {
    const row = held(displacementRow(zone.normal, zone.centre_mm));
    return ` r${z}: ${sum([[1, `s${z}`], ...row.map((part, k) => [part, `q${k}`])])} >= ${-gaps[z]}`;
  });
  const free = size.map((_, k) => ` q${k} free`);
  return [
    'Minimize',
    ` cost: ${linear} + [ ${square} ] / 2`,
    'Subject To',
    ...rows,
    'Bounds',
    ...free,
    'End',
    '',
  ].join('\n');
}

/** How far apart the two answers are, µm and µrad: a reference that answers something else would be none. */
function apart(input) {
  const answer = rest(input);
  const { Columns } = highs.solve(quadraticText(input), { output_flag: false });
  const theirs = [1, 1, 10, 10, 10].map((size, k) => size * Columns[`q${k}`].Primal);
  const ours = [...answer.shift_um, ...answer.turn_urad];
  return Math.max(...ours.map((part, k) => Math.abs(part - theirs[k])));
}

export async function restTiming(quick) {
  const seconds = quick ? 0.2 : 2;
  const most = Math.max(...inputs.map(apart));
  if (most > 0.01) throw new Error(`rest and the quadratic program differ by ${most} µm or µrad`);
  const texts = inputs.map(quadraticText);
  let turn = 0;
  const ours = () => rest(inputs[turn++ % inputs.length]);
  const theirs = () => highs.solve(texts[turn++ % texts.length], { output_flag: false });
  return [
    {
      what: 'rest, 24 zones',
      aim: 'under 0.2 ms',
      times: await timed(ours, { seconds, warm: 200 }),
      reference: { name: 'HiGHS, as a general QP', times: await timed(theirs, { seconds }) },
    },
  ];
}
