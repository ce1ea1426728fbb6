import type { JobPlan } from '../../core/ledger/entry.ts';
import { type Judged, judge } from '../../core/prove/verdict.ts';
import type { Said } from '../../core/quantity/say.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { type FeatureScale, featureScale } from './feature-scale.ts';

/** A value and its sd, µrad or µm. */
export interface Valued {
  readonly name: string;
  readonly value: number;
  readonly sd: number;
}

/** One feature as it is told: number, doubt, unit, verdict, and which way it is off. */
export interface FeatureLine {
  readonly name: string;
  readonly scale: FeatureScale;
  readonly value: Valued;
  readonly said: Said;
  /** Absent when no target is set. */
  readonly judged?: Judged;
  /** "21 to go": from the value to the near limit, when it is outside. */
  readonly to_go?: string;
  /** Which way it is: "convex", "back high"; absent at zero. */
  readonly way?: string;
}

/** A feature's line; verdicts use the unrounded numbers, and rounding is kept from making them lie. */
export function featureLine(
  plan: Pick<JobPlan, 'features' | 'targets' | 'words'>,
  value: Valued,
  system: UnitSystem,
): FeatureLine {
  const scale = featureScale(plan, value.name, system);
  const { target, words } = scale;
  const limits = target ? [target.low, target.high] : [];
  const said = scale.say(value.value, { sd: value.sd, limits });
  const judged = target ? judge(value.value, 2 * value.sd, target.low, target.high) : undefined;
  const way = said.sign === '−' ? words?.minus : said.sign === '+' ? words?.plus : undefined;
  const gap =
    judged?.verdict === 'outside' ? scale.say(judged.short, { signed: false, sd: value.sd }) : undefined;
  return {
    name: value.name,
    scale,
    value,
    said,
    ...(judged ? { judged } : {}),
    ...(gap ? { to_go: `${gap.number} to go` } : {}),
    ...(way === undefined ? {} : { way }),
  };
}

const rank = { outside: 0, 'not proven': 1, within: 2 } as const;

/** The feature that leads the screen: the job's first target, unless it is within and another is not; then the worst. */
export function leadingLine(lines: readonly FeatureLine[]): FeatureLine | undefined {
  const judged = lines.filter((line) => line.judged);
  const first = judged[0] ?? lines[0];
  if (first?.judged?.verdict !== 'within') return first;
  return [...judged].sort((a, b) => rank[a.judged!.verdict] - rank[b.judged!.verdict])[0];
}
