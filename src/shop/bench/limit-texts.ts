import type { FeatureScale } from './feature-scale.ts';

/** Limits finer than this share of their band need no more figures. */
const share = 0.01;
const mostDecimals = 4;

/** The limits of a feature's band as they stand over the jaws: both with the same, fewest figures that tell them right. */
export function limitTexts(scale: FeatureScale): { readonly low: string; readonly high: string } | undefined {
  const { target, shown, say } = scale;
  if (!target) return undefined;
  const [low, high] = [shown(target.low), shown(target.high)];
  const fits = (decimals: number) =>
    [low, high].every((value) => Math.abs(Number(value.toFixed(decimals)) - value) <= share * (high - low));
  let decimals = 0;
  while (decimals < mostDecimals && !fits(decimals)) decimals++;
  const text = (value: number) => {
    const said = say(value, { decimals });
    return said.sign === '' && Number(said.number) === 0 ? '0' : `${said.sign}${said.number}`;
  };
  return { low: text(target.low), high: text(target.high) };
}
