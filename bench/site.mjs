import { readFileSync } from 'node:fs';
import { sitePlaces } from '../dist/core/site/site.js';
import { timed } from './clock.mjs';
import { highs } from './highs.mjs';
import { quadraticText } from './rest.mjs';

const { input } = JSON.parse(
  readFileSync(new URL('../checks/data/cases/site-1.json', import.meta.url), 'utf8'),
);
const pads = input.slide.pads.map((pad) => ({ ...pad, zones: 8 }));
const many = {
  ...input,
  slide: { ...input.slide, pads },
  positions_mm: Array.from({ length: 1000 }, (_, k) => 255 + 1.09 * k),
  duty: Array.from({ length: 1000 }, () => 1),
  candidates_mm: Array.from({ length: 200 }, (_, k) => 255 + 5.4 * k),
};

/** 200 places of printing × 1000 positions, 24 zones; beside them one rest as a general quadratic program, times as many. */
export async function siteTiming(quick) {
  const rests = many.positions_mm.length * many.candidates_mm.length;
  const one = {
    slide: many.slide,
    gaps_um: pads.map((pad) => Array.from({ length: pad.zones }, (_, z) => 2 + z)),
    load: many.load,
    stiffness_N_per_mm3: many.stiffness_N_per_mm3,
    film_um: many.film_um,
  };
  const text = quadraticText(one);
  const alone = await timed(() => highs.solve(text, { output_flag: false }), { seconds: quick ? 0.2 : 2 });
  return [
    {
      what: 'site, 1000 positions × 200 places',
      aim: 'under 2 s',
      times: await timed(() => sitePlaces(many), { seconds: quick ? 0.5 : 5, least: 3, warm: 1 }),
      reference: {
        name: 'HiGHS, each rest as a general QP',
        times: { median: alone.median * rests, worst: alone.worst * rests, runs: alone.runs },
      },
    },
  ];
}
