import { fitLine } from '../math/line-fit.ts';
import { studentFactor } from '../math/student.ts';
import type { ThereAndBack } from './there-and-back.ts';

/** A place whose two readings part further than drift, a jump at the turn and the scatter of the others explain. */
export interface Apart {
  readonly index: number;
  /** What the others' drift and jump leave of its difference, back less there. */
  readonly left: number;
}

/** Chance that a clean pair of runs has any such place, where the scatter is as good as the others show it. */
const falseAlarm = 0.003;
/** So many times as stated the others may scatter before they count instead. */
const asStated = 2;
/** Fewer places than this judge none. */
const leastPlaces = 5;

/**
 * Places whose two readings are apart, the clearest first; each is held against drift and jump fitted through the others alone, so that it does
 * not spoil its own measure, for as many places as are tried (Bonferroni).
 *
 *     |left| > t(1 − chance / n, n − 3) · s · √(1 + h),   s = max(scatter of the others, √(1/6) · division)                  (1)
 *
 * With a stated sd it need not be learned from the others: √2 · sd and the normal distribution take its place, while the others scatter no
 * more than that allows.
 *
 * @param sd        one reading's stated sd, 0 when nothing is stated
 * @param division  the instrument's: two rounded readings scatter by √(1/6) of it
 */
export function runsApart(runs: ThereAndBack, sd: number, division: number): Apart[] {
  const many = runs.differences.length;
  const found: Apart[] = [];
  let kept = runs.differences.map((_, i) => i);
  while (kept.length >= leastPlaces && found.length < many / 4) {
    const share = 1 - falseAlarm / kept.length;
    const learned = studentFactor(share, kept.length - 3);
    const known = studentFactor(share, Infinity);
    const weighed = kept.map((index) => {
      const others = kept.filter((i) => i !== index);
      const fit = fitLine(
        others,
        others.map((i) => runs.differences[i]!),
      );
      const left = runs.differences[index]! - (fit.start + fit.slope * index);
      const scatter = Math.max(fit.residual_sd, Math.sqrt(1 / 6) * division);
      const pair = Math.SQRT2 * sd;
      const limit =
        sd > 0 && fit.residual_sd <= asStated * pair
          ? known * Math.max(pair, fit.residual_sd)
          : learned * scatter;
      const mean = others.reduce((sum, i) => sum + i, 0) / others.length;
      const square = others.reduce((sum, i) => sum + (i - mean) ** 2, 0);
      return {
        index,
        left,
        share: Math.abs(left) / (limit * Math.sqrt(1 + 1 / others.length + (index - mean) ** 2 / square)),
      };
    });
    const worst = weighed.reduce((most, one) => (one.share > most.share ? one : most));
    if (!(worst.share > 1)) break;
    found.push({ index: worst.index, left: worst.left });
    kept = kept.filter((i) => i !== worst.index);
  }
  return found;
}
