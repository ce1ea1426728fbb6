import { type Feature, featureUnit, type Target } from '../../core/body/feature.ts';
import type { JobPlan } from '../../core/ledger/entry.ts';
import type { FeatureWords } from '../../core/ledger/setup.ts';
import { type Said, type SayOptions, sayDeviation, spokenUnit } from '../../core/quantity/say.ts';
import { saySlope, slopeSign, slopeSize, spokenSlope } from '../../core/quantity/slope.ts';
import { clean, size_um, type UnitSystem, unitSign } from '../../core/quantity/unit.ts';

/** A feature with its band and words, in the unit it is spoken in: one unit for the value, its band and its trend. */
export interface FeatureScale {
  readonly feature: Feature;
  readonly target?: Target;
  readonly words?: FeatureWords;
  /** Said of a value and sd in µrad or µm. */
  readonly say: (value: number, options?: SayOptions) => Said;
  /** The unit of all of it, as it is written: "µm in 300 mm". */
  readonly unit: string;
  /** A number in the shown unit, for placing on a gauge. */
  readonly shown: (value: number) => number;
}

/** @throws RangeError  the job knows no such feature */
export function featureScale(
  plan: Pick<JobPlan, 'features' | 'targets' | 'words'>,
  name: string,
  system: UnitSystem,
): FeatureScale {
  const feature = plan.features.find((one) => one.name === name);
  if (!feature) throw new RangeError(`feature "${name}"; expected one of the job's features`);
  const target = plan.targets.find((one) => one.feature === name);
  const words = plan.words.find((one) => one.feature === name);
  const known = { feature, ...(target ? { target } : {}), ...(words ? { words } : {}) };
  if (featureUnit(feature) === 'urad') {
    const unit = spokenSlope(system, words?.span_mm);
    const size = slopeSize(unit);
    return {
      ...known,
      unit: slopeSign(unit),
      say: (value, options) => saySlope(value, system, { ...options, unit }),
      shown: (value) => clean(value / size),
    };
  }
  // One unit for the whole gauge, by the size of its band.
  const unit = spokenUnit(target ? Math.max(Math.abs(target.low), Math.abs(target.high)) : 0, system);
  return {
    ...known,
    unit: unitSign[unit],
    say: (value, options) => sayDeviation(value, system, { ...options, unit }),
    shown: (value) => clean(value / size_um[unit]),
  };
}
