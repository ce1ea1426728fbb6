import type { Entry } from '../../core/ledger/entry.ts';
import { heightsOf } from '../../core/ledger/rebuild-record.ts';
import type { Machine, MachineHeights, MachineSlide } from '../../core/order/machine.ts';

/** The lists of a machine whose things have a short name that others refer to. */
export type NamedList = 'dimensions' | 'bodies' | 'ways' | 'slides' | 'steps';

/** Short names that the ledger refers to: they cannot change without losing what was written of them. */
export type HeldNames = Readonly<Partial<Record<NamedList, readonly string[]>>>;

type Measure = number | string;

/** The words of a sum over sizes: figures are none of them. */
const word = /[A-Za-z]\w*/g;

const names = (machine: Machine, list: NamedList): readonly string[] =>
  list === 'dimensions'
    ? machine.dimensions.map((one) => one.key)
    : machine[list].map((one: { readonly id: string }) => one.id);

const one: Readonly<Record<NamedList, string>> = {
  dimensions: 'size',
  bodies: 'body',
  ways: 'way',
  slides: 'slide',
  steps: 'step',
};

/**
 * Gives a thing of a machine another short name, everywhere: in its list and in all that refers to it. Ways stand in what steps
 * make and are made from; bodies under ways, slides and places of heights; slides at benches and joints of heights; steps before
 * other steps; a size in every sum over sizes.
 *
 * @param to  a name that no other thing of the list has (`renameRefusal`)
 */
export function renamed(machine: Machine, list: NamedList, from: string, to: string): Machine {
  const id = (name: string): string => (name === from ? to : name);
  const own = <T extends { readonly id: string }>(all: readonly T[]): readonly T[] =>
    all.map((item) => (item.id === from ? { ...item, id: to } : item));
  const { heights } = machine;
  switch (list) {
    case 'bodies':
      return {
        ...machine,
        bodies: own(machine.bodies),
        ways: machine.ways.map((way) => ({ ...way, body: id(way.body) })),
        slides: machine.slides.map((slide) => ({ ...slide, moves: id(slide.moves), on: id(slide.on) })),
        ...withHeights(heights, (its) => ({
          ...its,
          places: its.places.map((place) => ({ ...place, body: id(place.body) })),
        })),
      };
    case 'ways':
      return {
        ...machine,
        ways: own(machine.ways),
        steps: machine.steps.map((step) => ({
          ...step,
          makes: step.makes.map(id),
          from: step.from.map((basis) => ('way' in basis ? { ...basis, way: id(basis.way) } : basis)),
        })),
      };
    case 'slides':
      return {
        ...machine,
        slides: own(machine.slides),
        steps: machine.steps.map((step) =>
          step.bench ? { ...step, bench: { ...step.bench, slide: id(step.bench.slide) } } : step,
        ),
        ...withHeights(heights, (its) => ({
          ...its,
          joints: its.joints.map((joint) => ({ ...joint, slide: id(joint.slide) })),
        })),
      };
    case 'steps':
      return {
        ...machine,
        steps: own(machine.steps).map((step) =>
          step.after
            ? { ...step, after: step.after.map((before) => ({ ...before, step: id(before.step) })) }
            : step,
        ),
      };
    case 'dimensions':
      return withSizeCalled(machine, from, to);
  }
}

const withHeights = (heights: MachineHeights | undefined, change: (its: MachineHeights) => MachineHeights) =>
  heights ? { heights: change(heights) } : {};

function withSizeCalled(machine: Machine, from: string, to: string): Machine {
  const sum = <M extends Measure>(measure: M): M =>
    (typeof measure === 'string'
      ? measure.replace(word, (name) => (name === from ? to : name))
      : measure) as M;
  const place = <P extends readonly [Measure, Measure, Measure]>([x, y, z]: P) =>
    [sum(x), sum(y), sum(z)] as const;
  const slide = (its: MachineSlide): MachineSlide => ({
    ...its,
    ...(its.dimensions
      ? {
          dimensions: Object.fromEntries(
            // "surface" is a material, no sum.
            Object.entries(its.dimensions).map(([key, value]) => [
              key,
              key === 'surface' ? value : sum(value),
            ]),
          ),
        }
      : {}),
    ...(its.targets
      ? {
          targets: its.targets.map((target) => ({
            ...target,
            low_um: sum(target.low_um),
            high_um: sum(target.high_um),
            ...(target.aim_um === undefined ? {} : { aim_um: sum(target.aim_um) }),
          })),
        }
      : {}),
    ...(its.makes && its.makes !== 'as the template'
      ? { makes: { ...its.makes, size_mm: place(its.makes.size_mm), middle_mm: place(its.makes.middle_mm) } }
      : {}),
  });
  return {
    ...machine,
    dimensions: machine.dimensions.map((size) => (size.key === from ? { ...size, key: to } : size)),
    slides: machine.slides.map(slide),
    ...withHeights(machine.heights, (its) => ({
      ...its,
      places: its.places.map((one) => ({ ...one, at_mm: place(one.at_mm) })),
      joints: its.joints.map((joint) => ({ ...joint, origin_mm: place(joint.origin_mm) })),
    })),
  };
}

/** Why a thing cannot get this short name, in words; nothing when it can. */
export function renameRefusal(
  machine: Machine,
  list: NamedList,
  from: string,
  to: string,
  held: HeldNames = {},
): string | undefined {
  if (to === from) return undefined;
  const isKey = list === 'dimensions';
  if (!(isKey ? /^[a-z][a-z0-9_]*$/ : /^[a-z0-9][a-z0-9-]*$/).test(to))
    return `A short name is small letters, figures and ${isKey ? '_, a letter first' : '-'}; it stays “${from}”.`;
  if (names(machine, list).includes(to))
    return `Another ${one[list]} is “${to}” already; it stays “${from}”.`;
  if (held[list]?.includes(from))
    return `The ledger holds what was done under “${from}”, so it stays; what it is called may change.`;
  return undefined;
}

/** The short names that a job's ledger refers to. */
export function heldNames(live: readonly Entry[]): HeldNames {
  const asked = live.flatMap((entry) =>
    entry.kind === 'axis taken'
      ? [stepAsked(entry.asked)]
      : entry.kind === 'gib taken'
        ? [entry.of, stepAsked(entry.asked)]
        : [],
  );
  const heights = heightsOf(live);
  return {
    steps: [
      ...live.flatMap((entry) =>
        entry.kind === 'step told' || entry.kind === 'bench opened' ? [entry.step] : [],
      ),
      ...asked.filter((step) => step !== undefined),
    ],
    slides: [...(heights?.changes ?? []), ...(heights?.liners ?? [])].map(({ joint }) => joint),
  };
}

/** The step whose bench an axis or a gib was steered at. */
const stepAsked = (asked: unknown): string | undefined => {
  const { scrape } = asked as { readonly scrape?: { readonly step?: string } };
  return scrape?.step;
};
