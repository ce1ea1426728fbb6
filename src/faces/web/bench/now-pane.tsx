import type { ReactNode } from 'react';
import { chanceWords } from '../../../core/prove/chance.ts';
import type { FeatureLine } from '../../../shop/bench/feature-line.ts';
import type { Phrase } from '../../../shop/phrase.ts';
import { Caution } from '../frame/notice.tsx';
import { Words } from '../frame/phrase.tsx';
import { FeatureRow } from './feature-rows.tsx';
import { Hero } from './hero.tsx';
import { type RoundValue, TrendGauge } from './trend-gauge.tsx';

/** How far out and how sure: the sentence, the number, the jaws and pin, the other features as rows. */
export function NowPane(props: {
  readonly sentence: Phrase;
  readonly lead: FeatureLine;
  /** Stands in the place of the leading feature's number and gauge. */
  readonly hero?: ReactNode;
  readonly others: readonly FeatureLine[];
  readonly past: readonly RoundValue[];
  readonly now: string;
  readonly forecast?: RoundValue | undefined;
  /** Chance that every feature lies in its band after the plan. */
  readonly chance?: number | undefined;
  readonly bearing: ReactNode;
  readonly warnings: readonly string[];
}) {
  const { sentence, lead, hero, others, past, now, forecast, chance, bearing, warnings } = props;
  return (
    <section className="now" aria-label="How far out">
      <p className="say">
        <Words phrase={sentence} />
      </p>
      {hero ?? (
        <>
          <Hero line={lead} />
          <TrendGauge line={lead} scaleOf={lead.scale} past={past} now={now} forecast={forecast} />
        </>
      )}
      {chance === undefined ? null : (
        <p className="quiet wide-only">
          In the band after this plan: <b>{chanceWords(chance)}</b>.
        </p>
      )}
      <div className="rows">
        {others.map((line) => (
          <FeatureRow key={line.name} line={line} />
        ))}
        {bearing}
      </div>
      {warnings.map((text) => (
        <Caution key={text}>{text}</Caution>
      ))}
    </section>
  );
}
