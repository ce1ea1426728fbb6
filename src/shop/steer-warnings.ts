import type { SweepFit } from '../core/estimate/sweep-fit.ts';
import { type Sweep, sweepDistances } from '../core/observe/sweep.ts';
import type { RestCheck, SteerAnswer, Warning } from '../core/plan/answer.ts';
import type { Plan } from '../core/plan/plan.ts';
import { sayLength } from '../core/quantity/length.ts';
import { told } from '../core/quantity/told.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';

/** Points left out, and scatter larger than the indicator's. */
export function sweepWarnings(
  fits: readonly SweepFit[],
  sweeps: readonly Sweep[],
  system: UnitSystem = 'metric',
): Warning[] {
  const { size } = told(system);
  // Places along a sweep to the whole mm, or a tenth of an inch.
  const place = (mm: number): string => sayLength(mm, system, { decimals: system === 'metric' ? 0 : 1 }).text;
  return fits.flatMap((fit, k) => {
    const distances = sweepDistances(sweeps[k]!);
    const outliers = fit.outliers.map(
      ({ point, reading_um, off_um }): Warning => ({
        code: 'outlier',
        text: `"${fit.name}": reading ${point + 1}, ${size(reading_um, { decimals: 1 })} at ${place(distances[point]!)}, stands ${size(off_um, { decimals: 1 })} off the line of the rest and is left out`,
      }),
    );
    if (fit.widen === 1) return outliers;
    return [
      ...outliers,
      {
        code: 'scatter',
        text: `"${fit.name}": readings scatter ${fit.widen.toFixed(1)} times wider than the indicator's own doubt; the doubt is widened by that`,
      },
    ];
  });
}

/**
 * Where elastic contact expects a feature elsewhere than the plan does, by more than the forecast's doubt (two sd).
 * @param now  each feature's value now, µrad or µm
 */
export function restWarnings(now: Readonly<Record<string, number>>, plan: Plan, check: RestCheck): Warning[] {
  if (!check.rests)
    return [
      {
        code: 'rests on few zones',
        text: 'after these passes the part may not sit still: too few zones carry it',
      },
    ];
  return plan.doubt.flatMap((budget, k) => {
    const planned = plan.predicted_now[k]!.value - now[budget.name]!;
    const apart = (check.moved[budget.name] ?? 0) - planned;
    if (Math.abs(apart) <= 2 * budget.whole) return [];
    return [
      {
        code: 'rests otherwise',
        text: `"${budget.name}": resting on what touches, the part would move otherwise than planned, by more than the forecast's doubt; measure again after the first passes`,
      },
    ];
  });
}

/** What `steer` warns of in the units of a shop: warnings of sweeps have figures, and are said anew from them. */
export function warningTexts(answer: SteerAnswer, sweeps: readonly Sweep[], system: UnitSystem): string[] {
  if (system === 'metric') return answer.warnings.map((one) => one.text);
  const ofSweeps = sweepWarnings(answer.estimate.sweeps, sweeps, system);
  const codes = new Set(ofSweeps.map((one) => one.code));
  return [...ofSweeps, ...answer.warnings.filter((one) => !codes.has(one.code))].map((one) => one.text);
}
