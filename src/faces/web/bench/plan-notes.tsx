import type { JobPlan } from '../../../core/ledger/entry.ts';
import type { SteerAnswer } from '../../../core/plan/answer.ts';
import { sayDeviation } from '../../../core/quantity/say.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import { doubtShares } from '../../../draw/doubt-shares.ts';
import { doubtShares as sharesOf } from '../../../shop/bench/doubt-shares.ts';
import type { FeatureLine } from '../../../shop/bench/feature-line.ts';
import { capital } from '../../../shop/phrase.ts';
import { Figure } from '../figure.tsx';
import { useWidth } from '../frame/width.ts';

/** What the passes of the plan will do: how far each pad goes down, and what a pass takes. */
export const PassNotes = (props: {
  readonly plan: JobPlan;
  readonly answer: SteerAnswer;
  readonly units: UnitSystem;
}) => {
  const { plan, answer, units } = props;
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
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
};

/** Where the forecast's doubt comes from: pins as wide as each share, one under another. */
export function DoubtNotes(props: {
  readonly plan: JobPlan;
  readonly answer: SteerAnswer;
  readonly line: FeatureLine;
}) {
  const { plan, answer, line } = props;
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const predicted = answer.plan.predicted.find((one) => one.name === line.name);
  const shares =
    predicted && sharesOf(plan, answer.plan.zones, answer.estimate.removal, line.value, predicted);
  if (!shares) return null;
  const { say, shown } = line.scale;
  const part = (name: string, sd: number) => ({
    name,
    doubt: shown(2 * sd),
    text: `± ${say(0, { sd }).doubt ?? '0'}`,
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
      <p className="quiet">{capital(line.said.unit)}, 19 times in 20.</p>
    </section>
  );
}
