import type { SweepFit } from '../core/estimate/sweep-fit.ts';
import { type Sweep, sweepDistances } from '../core/observe/sweep.ts';
import type { RestCheck, Warning } from '../core/plan/answer.ts';
import type { Plan } from '../core/plan/plan.ts';

const signed = (um: number): string => `${um < 0 ? '−' : '+'}${Math.abs(um).toFixed(1)}`;

/** Points left out, and scatter larger than the indicator's. */
export function sweepWarnings(fits: readonly SweepFit[], sweeps: readonly Sweep[]): Warning[] {
  return fits.flatMap((fit, k) => {
    const distances = sweepDistances(sweeps[k]!);
    const outliers = fit.outliers.map(
      ({ point, reading_um, off_um }): Warning => ({
        code: 'outlier',
        text: `"${fit.name}": reading ${point + 1}, ${signed(reading_um)} µm at ${distances[point]!.toFixed(0)} mm, stands ${signed(off_um)} µm off the line of the rest and is left out`,
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
