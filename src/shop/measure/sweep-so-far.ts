import { length, subtract } from '../../core/body/vector.ts';
import type { SetupRecord } from '../../core/ledger/entry.ts';
import type { SweepSetup } from '../../core/ledger/setup.ts';
import { pushSign, sweepStops } from '../../core/ledger/steer-input.ts';
import type { Sweep } from '../../core/observe/sweep.ts';

/** How far along the sweep each stop lies, mm: what its cell is named by. */
export const stopDistances = (setup: Pick<SweepSetup, 'from_mm' | 'to_mm' | 'points'>): number[] => {
  const whole_mm = length(subtract(setup.to_mm, setup.from_mm));
  return Array.from({ length: setup.points }, (_, i) => (whole_mm * i) / Math.max(1, setup.points - 1));
};

/**
 * A sweep as far as it is read: stops without a reading are left out, signs are turned when the push test fell.
 *
 * @param values_um  one a stop, as shown by the instrument; undefined where nothing was read yet
 */
export function sweepSoFar(
  setup: SweepSetup,
  record: SetupRecord,
  values_um: readonly (number | undefined)[],
): Sweep {
  const stops = sweepStops(setup);
  const read = stops.flatMap((stop, i) => {
    const value = values_um[i];
    return value === undefined ? [] : [{ stop, value: pushSign(record) * value }];
  });
  return {
    name: setup.name,
    rides: setup.rides,
    touches: setup.touches,
    plunger: setup.plunger,
    points_mm: read.map((one) => one.stop),
    readings_um: read.map((one) => one.value),
    reading_sd_um: setup.reading_sd_um,
    face_slope_urad: setup.face_slope_urad,
    face_slope_sd_urad: setup.face_slope_sd_urad,
    face: setup.face,
    ...(record.turned_over ? { turned_over: true } : {}),
  };
}
