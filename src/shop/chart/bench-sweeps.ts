import type { Job } from '../../core/ledger/job.ts';
import { steerInput } from '../../core/ledger/steer-input.ts';
import { sweepDistances } from '../../core/observe/sweep.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { lookAtSweep } from '../measure/look-at-sweep.ts';
import { type ShownSweep, shownSweep } from '../measure/shown-sweep.ts';

/** One sweep of a bench, ready to be drawn. */
export interface SweepTold {
  /** The set-up it was taken with. */
  readonly name: string;
  readonly round: number;
  /** "as found" of a bench's first round of it, "last" of its last. */
  readonly when: 'as found' | 'last';
  readonly plot: ShownSweep;
}

/**
 * The sweeps of the first and the last round of each set-up, one of each: a repeat says nothing that the first did not. A set-up
 * that was swept in one round only has one.
 */
export function sweepsTold(job: Job, system: UnitSystem): SweepTold[] {
  const { rounds } = steerInput(job);
  const all = rounds.flatMap((round, k) => round.sweeps.map((sweep) => ({ sweep, round: k + 1 })));
  const names = [...new Set(job.plan.setups.map((setup) => setup.name))];
  return names.flatMap((name) => {
    const its = all.filter((one) => one.sweep.name === name);
    const [first] = its;
    const last = its.findLast((one) => one.round !== first?.round);
    return [first, last].flatMap((one, k): SweepTold[] => {
      const look = one && lookAtSweep(one.sweep, undefined);
      if (!one || !look) return [];
      const { sweep, round } = one;
      return [
        {
          name,
          round,
          when: k === 0 ? 'as found' : 'last',
          plot: shownSweep(
            sweepDistances(sweep),
            sweep.readings_um,
            look,
            system === 'metric' ? 'um' : 'thou',
          ),
        },
      ];
    });
  });
}
