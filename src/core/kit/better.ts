import { needs, referenceSd_um } from './doubt-of.ts';
import type { Instrument, Kit, SetUp } from './kit.ts';

/** A way to better a set-up: what to do, the set-up it makes, and about how long it takes (common practice). */
export interface Step {
  readonly how: string;
  readonly setup: SetUp;
  readonly minutes: number;
}

/** A choice of steps of one kind: none of them, or one. */
export type Choice = (setup: SetUp) => readonly Step[];

const times = (count: number): string => (count === 2 ? 'twice' : `${count} times`);

/** More of what is counted in a set-up: sweeps, readings, runs, prints, seats. */
function more(
  key: 'sweeps' | 'readings' | 'runs' | 'prints' | 'seats',
  minutes: number,
  words: (count: number) => string,
): Choice {
  return (setup) => {
    const record = setup as unknown as Readonly<Record<string, unknown>>;
    const now = record[key];
    if (typeof now !== 'number') return [];
    return [2, 3, 4, 6, 8]
      .filter((count) => count > now)
      .map((count) => ({
        how: words(count),
        setup: { ...setup, [key]: count } as SetUp,
        minutes: minutes * (count - now),
      }));
  };
}

const morePoints: Choice = (setup) =>
  setup.method !== 'square sweep'
    ? []
    : [11, 21]
        .filter((points) => points > setup.points)
        .map((points) => ({
          how: `read ${points} points in each sweep`,
          setup: { ...setup, points },
          minutes: 0.2 * (points - setup.points) * setup.sweeps,
        }));

/** As long as the square lets it be. */
const longer =
  (kit: Kit): Choice =>
  (setup) => {
    if (setup.method !== 'square sweep') return [];
    const square = kit.references.find((one) => one.name === setup.reference);
    const most = (square?.length_mm ?? 0) * 0.95;
    return most > setup.length_mm * 1.1
      ? [
          {
            how: `sweep ${Math.round(most)} mm instead of ${setup.length_mm} mm, if the travel allows`,
            setup: { ...setup, length_mm: most },
            minutes: 1,
          },
        ]
      : [];
  };

/** Turning the reference, so that its own error goes out of the result. */
const turn: Choice = (setup) => {
  if (setup.method === 'square sweep' && !setup.turned_over)
    return [
      {
        how: 'turn the square over and sweep its other side',
        setup: { ...setup, turned_over: true },
        minutes: 8,
      },
    ];
  if (setup.method === 'straightedge sweep' && !setup.turned_over)
    return [
      {
        how: 'turn the straightedge over and sweep again',
        setup: { ...setup, turned_over: true },
        minutes: 10,
      },
    ];
  if (setup.method === 'level' && !setup.turned)
    return [{ how: 'turn the level end for end', setup: { ...setup, turned: true }, minutes: 1 }];
  if (setup.method === 'test bar' && !setup.turned_half)
    return [
      {
        how: 'turn the spindle half round and read again',
        setup: { ...setup, turned_half: true },
        minutes: 2,
      },
    ];
  return [];
};

const takeOutSag: Choice = (setup) =>
  (setup.method === 'straightedge sweep' || setup.method === 'test bar') &&
  !setup.sag_taken_out &&
  setup.plane === 'vertical'
    ? [{ how: 'take out the sag that is worked out', setup: { ...setup, sag_taken_out: true }, minutes: 1 }]
    : [];

const soak: Choice = (setup) =>
  setup.method === 'straightedge sweep' &&
  setup.warmth &&
  Math.abs(setup.warmth.warmer_K) + setup.warmth.sd_K > 0.1
    ? [
        {
          how: 'let it soak until top and underside are within 0.1 K',
          setup: { ...setup, warmth: { warmer_K: 0, sd_K: 0.05 } },
          minutes: 60,
        },
      ]
    : [];

/** Blocks laid on the machine take its warmth. */
const soakBlocks: Choice = (setup) =>
  setup.method === 'height by blocks' && setup.apart_K > 0.1
    ? [
        {
          how: 'let the blocks lie on the machine until both are as warm, within 0.1 K',
          setup: { ...setup, apart_K: 0.1 },
          minutes: 60,
        },
      ]
    : [];

const thinFilm: Choice = (setup) =>
  setup.method === 'plate print' && setup.film_um > 2
    ? [{ how: 'spot with a thinner film, 2 µm', setup: { ...setup, film_um: 2 }, minutes: 3 }]
    : [];

const finenessOf = (one: Instrument): number =>
  one.kind === 'indicator'
    ? Math.hypot(one.graduation_um / Math.sqrt(12), one.repeatability_um)
    : Math.hypot(one.graduation_urad / Math.sqrt(12), one.repeatability_urad);

/** A finer instrument of the kit that does the same. */
const otherInstrument =
  (kit: Kit): Choice =>
  (setup) => {
    if (!('instrument' in setup)) return [];
    const now = kit.instruments.find((one) => one.name === setup.instrument)!;
    const kinds: readonly string[] = needs[setup.method].instruments;
    return kit.instruments
      .filter((one) => one.name !== now.name && kinds.includes(one.kind) && finenessOf(one) < finenessOf(now))
      .map((one) => ({ how: `use “${one.name}”`, setup: { ...setup, instrument: one.name }, minutes: 3 }));
  };

/** A truer reference of the kit that is as long as is swept. */
const otherReference =
  (kit: Kit): Choice =>
  (setup) => {
    if (!('reference' in setup)) return [];
    const now = kit.references.find((one) => one.name === setup.reference)!;
    const long =
      'length_mm' in setup ? setup.length_mm : 'height_mm' in setup ? setup.height_mm : now.length_mm;
    return kit.references
      .filter(
        (one) =>
          one.kind === now.kind &&
          one.name !== now.name &&
          one.length_mm >= long &&
          referenceSd_um(one) < referenceSd_um(now),
      )
      .map((one) => ({ how: `use “${one.name}”`, setup: { ...setup, reference: one.name }, minutes: 5 }));
  };

/** Every choice there is with this kit, cheap ones first. */
export const choices = (kit: Kit): readonly Choice[] => [
  takeOutSag,
  turn,
  longer(kit),
  morePoints,
  otherInstrument(kit),
  otherReference(kit),
  thinFilm,
  more('readings', 0.5, (count) => `read ${times(count)} at each place`),
  more('sweeps', 3, (count) => `sweep ${times(count)}`),
  more('prints', 5, (count) => `take ${count} prints`),
  more('runs', 10, (count) => `step along it ${times(count)}, there and back`),
  more('seats', 4, (count) => `set the reference down ${times(count)} and take the mean`),
  soak,
  soakBlocks,
];
