import { answerSum } from '../sums/answer.ts';
import { dovetailAngle } from '../sums/dovetail.ts';
import { tan } from '../sums/sum.ts';

/** A dovetail's angle from two sizes of roll. */
export interface DovetailAngle {
  readonly angle_deg: number;
  readonly sd_deg: number;
  /** Less the angle of the drawing, minutes of arc; plus: steeper. */
  readonly off_min: number;
  /** What that opens along the flank's slope, µm. */
  readonly gap_um: number;
  readonly gap_sd_um: number;
}

/**
 * Source: the rule for two sizes of roll, core/sums/dovetail.ts; the gap is flank · tan(off).
 * @throws RangeError  readings that no angle gives
 */
export function angleFound(read: {
  readonly small_mm: number;
  readonly large_mm: number;
  readonly over_small_mm: number;
  readonly over_large_mm: number;
  readonly reading_sd_um: number;
  readonly flank_mm: number;
  readonly drawn_deg: number;
}): DovetailAngle {
  const values = {
    small: read.small_mm,
    large: read.large_mm,
    over_small: read.over_small_mm,
    over_large: read.over_large_mm,
  };
  const sd = read.reading_sd_um / 1000;
  const roll = dovetailAngle.inputs.small!.sd;
  const sds = { small: roll, large: roll, over_small: sd, over_large: sd };
  const ask = { name: dovetailAngle.name, values, sds, taken: [], usual: [] };
  const angle = answerSum(dovetailAngle, ask).find((one) => one.key === 'angle')!;
  const off_deg = angle.value - read.drawn_deg;
  return {
    angle_deg: angle.value,
    sd_deg: angle.sd,
    off_min: 60 * off_deg,
    gap_um: 1000 * read.flank_mm * tan(off_deg),
    gap_sd_um: 1000 * read.flank_mm * tan(angle.sd),
  };
}
