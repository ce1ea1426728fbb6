// The invented machine: it gives readings and nothing else. Its truth is never told to the tool.

import { sweepStops } from '../../dist/core/ledger/steer-input.js';
import { seededRandom } from '../../dist/core/math/random.js';
import { practiceMachine } from '../../dist/core/practice/machine.js';

/** What a pass really takes off each material, µm: median, and how scrapers differ. Not what the tool first believes. */
const hands = {
  liner: { median_um: 8.3, log_sd: 0.25 },
  iron: { median_um: 3.6, log_sd: 0.28 },
  bronze: { median_um: 3.2, log_sd: 0.28 },
};

const scaled = (vector, by) => vector.map((part) => part * by);
const added = (a, b) => a.map((part, k) => part + b[k]);

/** A part's weight where its pads can carry it: against the sum of their normals, through their middle. */
function weightOf(slide) {
  let along = [0, 0, 0];
  let middle = [0, 0, 0];
  let area = 0;
  for (const pad of slide.pads) {
    const its = pad.length_mm * pad.width_mm;
    along = added(along, scaled(pad.normal, its));
    middle = added(middle, scaled(pad.centre_mm, its));
    area += its;
  }
  return {
    force_N: 0.015 * Math.hypot(...along),
    at_mm: scaled(middle, 1 / area),
    direction: scaled(along, -1),
    stiffness_N_per_mm3: 100,
  };
}

/** The machine, its chances all from one seed. */
export function inventedMachine(seed) {
  const { normal, even } = seededRandom(seed);
  const typed = (value, places = 1) => {
    const text = Math.abs(value).toFixed(places);
    return `${value < 0 && Number(text) !== 0 ? '-' : '+'}${text}`;
  };

  return {
    even,
    normal,
    /** A worn slide on the bench of a step, read with the set-ups of its plan. `stands_um`: packed so much too high. */
    bench(plan, own, stands_um = 0) {
      const of = (kind) => plan.setups.filter((setup) => setup.kind === kind);
      const machine = practiceMachine(
        {
          slide: plan.slide,
          features: plan.features,
          sweeps: of('sweep').map((setup) => ({ ...setup, points_mm: sweepStops(setup), readings_um: [] })),
          levels: of('level').map((setup) => ({ ...setup, reading_urad: 0 })),
          heights: of('height').map((setup) => ({ ...setup, reading_um: 0 })),
          weight: weightOf(plan.slide),
          removal: Object.fromEntries(plan.slide.pads.map((pad) => [pad.material, hands[pad.material]])),
          film_um: plan.film_um ?? 3,
          // The longer it is, the less it leans for the same wear at its ends.
          wear: {
            turn_urad: [40, 40, 110].map((sd) => sd * Math.min(1, 400 / plan.slide.pads[0].length_mm)),
            bow_um: 6,
            cubic_um: 4,
            wave_um: 2,
            across_um: 1,
            cell_um: 1.5,
          },
        },
        own,
      );
      return {
        /** The deeds of one round's measuring, readings as they are typed, and of its print. */
        round(k) {
          return [...this.read(k), { kind: 'print read', round: k, share: machine.print() }];
        },
        /** The measuring alone. */
        read(k) {
          const seen = machine.measure();
          const record = { push: 'climbed', support: 'in place, own weight', temperature_C: 20 };
          return [
            ...of('sweep').map((setup, i) => ({
              kind: 'sweep taken',
              round: k,
              setup: setup.id,
              record,
              readings: seen.sweeps[i].readings_um.map((um) => typed(um - seen.sweeps[i].readings_um[0])),
            })),
            ...of('level').map((setup, i) => ({
              kind: 'level read',
              round: k,
              setup: setup.id,
              record,
              reading: `${typed(seen.levels[i].reading_urad / 1000, 3)} mm/m`,
            })),
            ...of('height').map((setup, i) => ({
              kind: 'height read',
              round: k,
              setup: setup.id,
              record,
              reading: typed(seen.heights[i].reading_um + stands_um),
            })),
          ];
        },
        scrape: (passes, spot) => (spot ? machine.spot(passes) : machine.scrape(passes)),
      };
    },
    /** A level stepped along a way whose middle lies `middle_um` high (a parabola), there and back. */
    way(length_mm, middle_um, sd_urad = 4) {
      const step_mm = length_mm > 700 ? 200 : 100;
      const steps = Math.max(4, Math.round(length_mm / step_mm));
      const height = (k) => 4 * middle_um * (k / steps) * (1 - k / steps);
      const run = () =>
        Array.from({ length: steps }, (_, k) =>
          Number((((height(k + 1) - height(k)) / step_mm) * 1000 + normal(0, sd_urad)).toFixed(1)),
        );
      // The run back is taken from the far end, the last step first.
      return {
        kind: 'angles',
        step_mm,
        angles_urad: run(),
        return_urad: run().reverse(),
        reading_sd_urad: sd_urad,
      };
    },
    /** Two readings at a place of a bar, as it is and turned half round. */
    turned: (true_um, bar_um, sd_um = 1) =>
      [true_um + bar_um, true_um - bar_um].map((um) => Number((um + normal(0, sd_um)).toFixed(1))),
    /** One reading of an indicator or micrometer. */
    read: (true_um, sd_um = 1) => Number((true_um + normal(0, sd_um)).toFixed(1)),
  };
}
