import type { GaugeBand } from '../../../draw/jaws.ts';
import type { FeatureScale } from '../../../shop/bench/feature-scale.ts';
import { limitTexts } from '../../../shop/bench/limit-texts.ts';

/** A feature's band as the jaws of a gauge, its limits written over them; no jaws where no target is set. */
export function gaugeBand(scale: FeatureScale): GaugeBand {
  const { target, shown } = scale;
  const limits = limitTexts(scale);
  if (!target || !limits) return {};
  return {
    low: shown(target.low),
    high: shown(target.high),
    low_text: limits.low,
    high_text: limits.high,
  };
}
