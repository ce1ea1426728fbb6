import { featureUnit } from '../../../core/body/feature.ts';
import type { JobPlan } from '../../../core/ledger/entry.ts';
import { featureScale } from '../../../shop/bench/feature-scale.ts';
import { lasting, type RateTime } from '../../../shop/parts/lasting-sentence.ts';
import { capital } from '../../../shop/phrase.ts';
import { Words } from '../frame/phrase.tsx';
import { Segments } from '../frame/segments.tsx';
import type { Units } from '../keep/settings.ts';
import { CellField } from './cell.tsx';
import { foundIn, type PartsCell, type PartsDraft, type PartsRead } from './cells.ts';

/** Where a feature begins to wear from. */
export interface WearStart {
  readonly from: 'as planned' | 'as it is now' | 'from its aim';
  readonly value: number;
  readonly sd: number;
}

const rateKey = (feature: string): string => `wear ${feature}`;

/** A cell for the rate of every feature that has a band. */
export const rateCells = (plan: JobPlan, per: RateTime): readonly PartsCell[] =>
  plan.targets.map(({ feature: name }) => {
    const feature = plan.features.find((one) => one.name === name)!;
    const words = plan.words.find((one) => one.feature === name);
    return {
      key: rateKey(name),
      label: `${capital(name)} in ${per === 'year' ? 'a year' : '1000 h'}${words ? `, plus: ${words.plus}` : ''}`,
      unit: featureUnit(feature),
      signed: true,
      empty: 'to be typed: how much it has worn, over how long it took',
    };
  });

/** How long each feature stays in its band, at a rate of wear that is typed. */
export function Wear(props: {
  readonly plan: JobPlan;
  readonly starts: ReadonlyMap<string, WearStart>;
  readonly cells: readonly PartsCell[];
  readonly reads: Readonly<Record<string, PartsRead>>;
  readonly draft: PartsDraft;
  readonly onType: (key: string, text: string) => void;
  readonly onPer: (per: RateTime) => void;
  readonly system: Units;
}) {
  const { plan, starts, cells, reads, draft, onType, onPer, system } = props;
  return (
    <>
      <Segments
        label="Wear told in"
        choices={[
          { value: 'year', words: 'a year' },
          { value: '1000 h', words: '1000 h of work' },
        ]}
        chosen={draft.per}
        onChoose={onPer}
      />
      <ul className="rows parts-wear">
        {plan.targets.map(({ feature }, k) => {
          const start = starts.get(feature)!;
          const rate = foundIn(reads[rateKey(feature)]!);
          const scale = featureScale(plan, feature, system);
          const told = rate
            ? lasting(
                plan,
                {
                  feature,
                  value: start.value,
                  sd: start.sd,
                  rate: rate.value,
                  rate_sd: rate.sd ?? 0,
                  per: draft.per,
                },
                system,
              )
            : undefined;
          return (
            <li key={feature}>
              <CellField cell={cells[k]!} draft={draft} read={reads[rateKey(feature)]!} onType={onType} />
              <div>
                <p>
                  {told ? (
                    <Words phrase={told.sentence} />
                  ) : (
                    `${capital(feature)}: told once its wear is typed.`
                  )}
                </p>
                {told?.between ? <p className="quiet">{told.between}</p> : null}
                {told?.aim ? <p className="quiet">{told.aim}</p> : null}
                <p className="quiet">
                  Begins {start.from},{' '}
                  <span className="nb">{scale.say(start.value, { sd: start.sd }).text}</span>; band{' '}
                  <span className="nb">{scale.say(scale.target!.low).text}</span> to{' '}
                  <span className="nb">{scale.say(scale.target!.high).text}</span>.
                </p>
              </div>
            </li>
          );
        })}
      </ul>
      <p className="quiet">
        Wear is taken as steady. A machine runs in fast and then slows: type it again after the first check.
      </p>
    </>
  );
}
