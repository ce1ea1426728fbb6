import type { JobPlan } from '../../core/ledger/entry.ts';
import type { RemovalAnswer, SteerAnswer } from '../../core/plan/answer.ts';
import { type Said, sayDeviation } from '../../core/quantity/say.ts';
import { saySlope } from '../../core/quantity/slope.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { featureLine } from '../bench/feature-line.ts';
import type { PracticeTruth, SlipMade } from './practice-job.ts';

/** One thing that was told, beside what was so. */
export interface ToldAndTrue {
  readonly name: string;
  /** Of both numbers. */
  readonly unit: string;
  readonly told: string;
  readonly true: string;
  /** "inside the doubt", or how far outside; absent where no doubt was told. */
  readonly holds?: string;
}

const within = 'inside the doubt';

/** Features, bearing and removal of a round as told after it, beside the truth of that round. */
export function toldAndTrue(
  plan: JobPlan,
  steer: SteerAnswer,
  truth: PracticeTruth['rounds'][number],
  system: UnitSystem,
): ToldAndTrue[] {
  const features = steer.estimate.features.flatMap((told): ToldAndTrue[] => {
    const value = truth.features[told.name];
    if (value === undefined) return [];
    const line = featureLine(plan, told, system);
    const off = Math.abs(told.value - value);
    return [
      {
        name: told.name,
        unit: line.said.unit,
        told: figures(line.said),
        true: figures(line.scale.say(value, { decimals: 1 })),
        holds:
          off <= 2 * told.sd
            ? within
            : `${line.scale.say(off - 2 * told.sd, { signed: false, decimals: 1 }).text} outside the doubt`,
      },
    ];
  });
  const share = steer.plan.bearing.share;
  const bears: ToldAndTrue[] =
    share !== undefined
      ? [
          {
            name: 'bears on',
            unit: '% of the pads',
            told: perCent(share),
            true: perCent(truth.bearing_share),
          },
        ]
      : [];
  return [...features, ...bears, ...steer.estimate.removal.flatMap((one) => removed(one, truth, system))];
}

const perCent = (share: number): string => `${Math.round(share * 100)}`;

/** "+14 ± 4", unbroken, its unit told apart. */
const figures = (said: Said): string =>
  `${said.sign}${said.number}${said.doubt === undefined ? '' : `\u00a0±\u00a0${said.doubt}`}`;

function removed(
  told: RemovalAnswer,
  truth: PracticeTruth['rounds'][number],
  system: UnitSystem,
): ToldAndTrue[] {
  const um = truth.pass_um[told.material];
  if (um === undefined) return [];
  const off = Math.abs(told.um - um);
  const unit = system === 'metric' ? 'um' : 'thou';
  const said = sayDeviation(told.um, system, { signed: false, unit, sd: told.sd_um });
  const past = sayDeviation(off - 2 * told.sd_um, system, { signed: false, decimals: 1 }).text;
  return [
    {
      name: `a pass takes, ${told.material}`,
      unit: said.unit,
      told: figures(said),
      true: figures(sayDeviation(um, system, { signed: false, unit, decimals: system === 'metric' ? 1 : 2 })),
      holds: off <= 2 * told.sd_um ? within : `${past} outside the doubt`,
    },
  ];
}

/** What went wrong on purpose, as a sentence. */
export function slipSentence(slip: SlipMade, plan: Pick<JobPlan, 'places'>, system: UnitSystem): string {
  const { round } = slip;
  switch (slip.kind) {
    case 'sweep reversed':
      return `In round ${round} the sweep was read with every sign turned.`;
    case 'reference moved':
      return `After round ${round} the square moved by ${saySlope(slip.by_urad ?? 0, system).text}.`;
    case 'zone missed':
      return `In round ${round} zone ${(slip.zone ?? 0) + 1} of the ${slip.pad}, counted from the ${plan.places.minus_end}, was left out.`;
    case 'pass too many':
      return `In round ${round} the ${slip.pad} got a pass more than was ticked off.`;
  }
}
