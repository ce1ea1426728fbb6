import { Link } from 'wouter';
import type { RoundRecord } from '../../../core/ledger/round-record.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import type { JobAnswer } from '../../../shop/answer-job.ts';
import { measuringSentence } from '../../../shop/bench/bench-sentence.ts';
import { featureScale } from '../../../shop/bench/feature-scale.ts';
import type { NextDeed } from '../../../shop/bench/next-deed.ts';
import { capital } from '../../../shop/phrase.ts';
import { Mark } from '../frame/mark.tsx';
import { Words } from '../frame/phrase.tsx';
import type { OpenJob } from '../keep/jobs.ts';
import { DeedFoot } from './deed-foot.tsx';
import { pastRounds } from './rounds.ts';
import { TrendGauge } from './trend-gauge.tsx';

/** The round has no answer yet: the jaws with no pin, what to do next, how many readings, how long. */
export function MeasuringBench(props: {
  readonly open: OpenJob;
  readonly units: UnitSystem;
  readonly answer: JobAnswer | undefined;
  readonly deed: NextDeed;
  readonly record: RoundRecord;
}) {
  const { open, units, answer, deed, record } = props;
  const { plan, round } = open.job;
  const name = plan.targets[0]?.feature ?? plan.features[0]?.name;
  const scale = name === undefined ? undefined : featureScale(plan, name, units);
  const next = plan.setups.find((setup) => setup.id === deed.setup);
  const taken = plan.setups.filter((setup) => record.taken[setup.id]).map((setup) => setup.name);
  return (
    <main className="page with-foot narrow">
      <p className="say">
        <Words phrase={measuringSentence(next, taken)} />
      </p>
      {scale ? (
        <p className="quiet gauge-of">
          {capital(scale.feature.name)}, {scale.unit}
        </p>
      ) : null}
      {scale ? (
        <TrendGauge line={undefined} scaleOf={scale} past={pastRounds(answer, scale.feature.name, round)} />
      ) : null}
      {taken.length === 0 ? <Cautions cautions={plan.cautions} open={round === 1} /> : null}
      <DeedFoot
        id={open.id}
        deed={deed}
        {...(taken.length === 0
          ? {}
          : {
              beside: (
                <Link className="third" href={`/job/${encodeURIComponent(open.id)}/measure`}>
                  Undo or repeat a reading
                </Link>
              ),
            })}
      />
    </main>
  );
}

/** All cautions of the work, in sight before the first round and a tap away after it. */
const Cautions = (props: { readonly cautions: readonly string[]; readonly open: boolean }) => (
  <details className="optional" open={props.open}>
    <summary>Before you begin</summary>
    <ul>
      {props.cautions.map((caution) => (
        <li className="caution" key={caution}>
          <Mark name="caution" size={20} />
          <span>{caution}</span>
        </li>
      ))}
    </ul>
  </details>
);
