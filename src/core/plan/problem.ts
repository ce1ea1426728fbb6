import { displacementRow, type PoseNumbers, rise } from '../body/displacement.ts';
import { type Feature, featureRow, type Target } from '../body/feature.ts';
import { type Settling, settling } from '../body/settle.ts';
import { type Slide, type Zone, zonesOf } from '../body/slide.ts';
import { unit } from '../body/vector.ts';
import type { PassSize, SinkLimit } from '../observe/round.ts';

/** A target with its feature's row over the pose and the value it has now. */
export interface Wanted extends Target {
  readonly row: PoseNumbers;
  /** Value now, µrad or µm. */
  readonly now: number;
}

/** The least the slide may stand above its present place at a point, along `row`: −most_um. */
export interface Sink {
  readonly name: string;
  readonly row: PoseNumbers;
  readonly most_um: number;
}

/** What depth and passes are planned from: geometry, where the features are, and what limits the metal that may come off. */
export interface PlanProblem {
  readonly slide: Slide;
  readonly zones: readonly Zone[];
  readonly settled: Settling;
  readonly wanted: readonly Wanted[];
  /** One a zone, µm: what one pass takes off. */
  readonly pass_um: readonly number[];
  /** One a zone, µm: what may still come off; Infinity where nothing is said. */
  readonly stock_um: readonly number[];
  readonly sinks: readonly Sink[];
}

/** Puts a planning problem together. `values` holds each target's feature as estimated, µrad or µm, by name. */
export function planProblem(
  input: {
    readonly slide: Slide;
    readonly features: readonly Feature[];
    readonly targets: readonly Target[];
    readonly sink?: readonly SinkLimit[];
  },
  values: Readonly<Record<string, number>>,
  passes: Readonly<Record<string, PassSize>>,
): PlanProblem {
  const zones = zonesOf(input.slide);
  const features = new Map(input.features.map((feature) => [feature.name, feature]));
  return {
    slide: input.slide,
    zones,
    settled: settling(input.slide),
    wanted: input.targets.map((target) => ({
      ...target,
      row: featureRow(features.get(target.feature)!),
      now: values[target.feature]!,
    })),
    pass_um: zones.map((zone) => passes[zone.pad.material]!.um),
    stock_um: zones.map((zone) => zone.pad.stock_um ?? Infinity),
    sinks: (input.sink ?? []).map((limit) => ({
      name: limit.name,
      row: displacementRow(unit(limit.direction ?? [0, 0, 1]), limit.at_mm),
      most_um: limit.most_um,
    })),
  };
}

/** Volume of metal in depths (µm) over the zones' areas, mm³. */
export const volumeOf = (zones: readonly Zone[], depths_um: readonly number[]): number =>
  zones.reduce((sum, zone, z) => sum + zone.area_mm2 * rise(1, depths_um[z]!), 0);

/** What binds when no answer exists, and by how much it would have to give. */
export interface BindingLimit {
  readonly kind: 'stock' | 'sink' | 'feature';
  /** The pad, the sink limit or the feature. */
  readonly name: string;
  /** How much more would be needed, µm (µrad for a turn). */
  readonly short: number;
  readonly unit: 'um' | 'urad';
}

/** The unit of a target's feature, told by its row: a turn moves with no shift. */
export const limitUnit = ({ row }: Pick<Wanted, 'row'>): BindingLimit['unit'] =>
  row.slice(3).some((part) => part !== 0) && row.slice(0, 3).every((part) => part === 0) ? 'urad' : 'um';

/** "12.5 µm". */
export const limitAmount = ({ short, unit }: BindingLimit): string =>
  `${short < 0.1 ? short.toPrecision(1) : short.toFixed(1)} ${unit === 'um' ? 'µm' : 'µrad'}`;

/** No answer exists; `limits` says which limit binds and by how much. */
export interface NoAnswer {
  readonly ok: false;
  readonly why: 'limits' | 'not seen' | 'not held' | 'not in time';
  readonly limits: readonly BindingLimit[];
  readonly text: string;
}
