import type { JobPlan } from '../../../core/ledger/entry.ts';
import type { SteerAnswer } from '../../../core/plan/answer.ts';
import { sayDeviation } from '../../../core/quantity/say.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import { doubtShares } from '../../../draw/doubt-shares.ts';
import type { RoundHistory } from '../../../shop/answer-job.ts';
import type { FeatureLine } from '../../../shop/bench/feature-line.ts';
import { Figure } from '../figure.tsx';
import { useWidth } from '../frame/width.ts';
import { shortUnit } from './feature-rows.tsx';

/** What the passes of the plan will do: how far each pad goes down, and what a pass takes. */
export const PassNotes = (props: {
  readonly plan: JobPlan;
  readonly answer: SteerAnswer;
  readonly units: UnitSystem;
  readonly rounds: readonly RoundHistory[];
}) => {
  const { plan, answer, units, rounds } = props;
  return (
    <section>
      <h3>What these passes will do</h3>
      <dl className="rows">
        <div className="what">
          <dt>Goes down</dt>
          <dd>
            <b>
              {plan.slide.pads
                .map((pad, i) => {
                  const depth = sayDeviation(answer.plan.settle_um[i] ?? 0, units, {
                    signed: false,
                    decimals: units === 'metric' ? 0 : 1,
                  });
                  return `${depth.text} at the ${pad.name}`;
                })
                .join(', ')}
            </b>
          </dd>
        </div>
        {answer.estimate.removal.map((removal) => (
          <div className="what" key={removal.material}>
            <dt>A pass takes</dt>
            <dd>
              <b>{sayDeviation(removal.um, units, { signed: false, sd: removal.sd_um }).text}</b> off the{' '}
              {removal.material}
              <Learned material={removal.material} rounds={rounds} units={units} />
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
};

/** How the removal of a pass was learned, round by round, before the last. */
const Learned = (props: {
  readonly material: string;
  readonly rounds: readonly RoundHistory[];
  readonly units: UnitSystem;
}) => {
  const before = props.rounds.slice(0, -1).flatMap(({ round, removal }) => {
    const one = removal.find(({ material }) => material === props.material);
    if (!one) return [];
    const said = sayDeviation(one.um, props.units, { signed: false, sd: one.sd_um });
    return [`${said.number}\u00a0±\u00a0${said.doubt ?? '0'} in round ${round}`];
  });
  return before.length > 0 ? <small>learned here: {before.join(', then ')}</small> : null;
};

/** Where the forecast's doubt comes from: pins as wide as each share, one under another. */
export function DoubtNotes(props: { readonly answer: SteerAnswer; readonly line: FeatureLine }) {
  const { answer, line } = props;
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const shares = answer.plan.doubt.find((one) => one.name === line.name);
  if (!shares) return null;
  const { say, shown } = line.scale;
  const part = (name: string, sd: number) => ({
    name,
    doubt: shown(2 * sd),
    text: `± ${say(0, { sd }).doubt ?? '0'} ${shortUnit(line.said.unit)}`,
  });
  return (
    <section ref={ref}>
      <h3>Where the doubt comes from</h3>
      <Figure
        shape={doubtShares({
          title: `Doubt of ${line.name} after these passes, by where it comes from`,
          width,
          shares: [
            part('How much a pass takes', shares.removal),
            part('Scatter of the passes', shares.scatter),
            part('The readings so far', shares.readings),
          ],
          together: part('Together', shares.whole),
        })}
      />
      <p className="quiet">In {line.said.unit}; ± holds 19 times in 20.</p>
    </section>
  );
}
