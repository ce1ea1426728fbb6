import { rise } from '../../core/body/displacement.ts';
import { studentFactor } from '../../core/math/student.ts';
import { sdWithin } from '../../core/prove/distribution.ts';
import { divisionOf } from '../../core/survey/follow-on.ts';
import type { LineInput } from '../../core/survey/line-input.ts';
import { type Profile, together } from '../../core/survey/profile.ts';

/** What the run back says of the run there. */
export interface LineClosure {
  /** Where the run back ends beside where the run there began, µm; plus: it ends high. */
  readonly closing_um: number;
  /** One sd of that by the scatter of the readings alone. */
  readonly closing_sd_um?: number;
  /** Whether it closes within three of them, more where the sd is the scatter of few readings. */
  readonly closes: boolean;
  /** Steady drift from one reading to the next, seen in the two runs and taken out: µrad for angles, µm for heights. */
  readonly drift_urad?: number;
  readonly drift_um?: number;
  readonly drift_sd: number;
  /** One reading's sd as the two runs show it, same unit. */
  readonly scatter: number;
  /** The step or station whose two readings are left furthest apart, and by how much. */
  readonly worst: { readonly index: number; readonly left: number };
}

/** Closing within three sds is chance; where the sd is that of a few runs' own scatter, within Student's factor of the same chance. */
const chance = 0.9973;
const closingSds = (freedom: number): number => studentFactor(chance, freedom);

export function lineClosure(input: LineInput, profile: Profile): LineClosure {
  const runs = profile.runs!;
  const many = runs.mean.length;
  const isAngles = input.kind === 'angles';
  // There goes up by the sum of its steps, back comes down by the sum of its own.
  const closing_um = isAngles
    ? -rise(
        runs.differences.reduce((sum, difference) => sum + difference, 0),
        input.step_mm,
      )
    : runs.differences[0]!;
  const stated = statedSd(input);
  // Two rounded readings agree better by chance than they can be known to: a division's own spread is left.
  const shown = Math.max(runs.scatter, sdWithin(divisionOf(runs.mean.map((mean) => 2 * mean)) / 2));
  const sd = stated ?? (many > 2 ? shown : undefined);
  const sds = closingSds(stated === undefined ? many - 2 : Infinity);
  const closing_sd_um =
    sd === undefined ? undefined : isAngles ? rise(sd, input.step_mm) * Math.sqrt(2 * many) : sd * Math.SQRT2;
  return {
    closing_um,
    ...(closing_sd_um === undefined ? {} : { closing_sd_um }),
    closes: closing_sd_um === undefined || Math.abs(closing_um) <= sds * closing_sd_um,
    ...(isAngles ? { drift_urad: runs.drift } : { drift_um: runs.drift }),
    drift_sd: runs.drift_sd,
    scatter: runs.scatter,
    worst: { index: runs.worst, left: runs.left[runs.worst]! },
  };
}

/** One reading's sd as stated, if it is. */
export const statedSd = (input: LineInput): number | undefined =>
  input.kind === 'angles'
    ? together(input.reading_sd_urad, input.repeatability_sd_urad)
    : together(input.reading_sd_um, input.repeatability_sd_um);
