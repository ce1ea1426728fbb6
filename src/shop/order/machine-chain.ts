import { heightsInput } from '../../contract/heights.ts';
import type { Vector } from '../../core/body/vector.ts';
import type { Chain, Change } from '../../core/heights/chain.ts';
import { type Measure, measured } from '../../core/ledger/measure.ts';
import type { Template } from '../../core/ledger/template.ts';
import type { Machine } from '../../core/order/machine.ts';
import { machineSizes, slidePlan } from './bench-plan.ts';
import type { HeightsAsk } from './heights.ts';

/** What is known of a machine's heights beyond its drawing. */
export interface MachineHeightsKnown {
  /** Its sizes, where they differ from its file. */
  readonly dimensions?: Readonly<Record<string, number>>;
  readonly changes?: readonly Change[];
  /** Heights as measured, by name. */
  readonly measured?: Readonly<Record<string, { readonly um: number; readonly sd_um: number }>>;
}

/**
 * The chain of heights of a machine: its joints are its slides, each with the pads of its template.
 * @returns undefined for a machine without heights
 */
export function machineChain(
  machine: Machine,
  templates: readonly Template[],
  known: MachineHeightsKnown = {},
): Chain | undefined {
  const { heights } = machine;
  if (!heights) return undefined;
  const sizes = machineSizes(machine, known.dimensions);
  const placed = (place: readonly Measure[]): Vector =>
    place.map((part) => measured(part, sizes)!) as unknown as Vector;
  return {
    places: heights.places.map((place) => ({ ...place, at_mm: placed(place.at_mm) })),
    joints: heights.joints.map(({ slide, origin_mm, travel }) => {
      const its = machine.slides.find((one) => one.id === slide)!;
      const template = templates.find((one) => one.id === its.template)!;
      return {
        name: slide,
        moves: its.moves,
        on: its.on,
        slide: slidePlan(its, template, sizes, machine.title).slide,
        origin_mm: placed(origin_mm),
        travel,
      };
    }),
    heights: heights.heights.map((height) => {
      const own = known.measured?.[height.name];
      return own ? { ...height, measured: own } : height;
    }),
    changes: known.changes ?? [],
  };
}

/**
 * What `heights` is asked, from its file.
 * @throws BadInput
 */
export const heightsAsk = (
  value: unknown,
  machines: readonly Machine[],
  templates: readonly Template[],
): HeightsAsk =>
  heightsInput(value, {
    templates,
    machines,
    chainOf: (machine, known) => machineChain(machine, templates, known),
  });
