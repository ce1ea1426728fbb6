import type { RoundRecord } from '../../../core/ledger/round-record.ts';
import type { SteerAnswer } from '../../../core/plan/answer.ts';
import { told } from '../../../core/quantity/told.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import type { FeatureLine } from '../../../shop/bench/feature-line.ts';
import { barWorking } from '../../../shop/order/axis-working.ts';
import { capital, counted } from '../../../shop/phrase.ts';
import type { OpenJob } from '../keep/jobs.ts';

/** How the numbers of the screen came about: formula, inputs, source. */
export function Working(props: {
  readonly open: OpenJob;
  readonly steer: SteerAnswer;
  readonly record: RoundRecord;
  readonly line: FeatureLine;
  readonly units: UnitSystem;
}) {
  const { open, steer, record, line, units } = props;
  const { plan, round } = open.job;
  const { target, feature } = line.scale;
  const words = told(units);
  const fine = (value: number, sd?: number) =>
    words[feature.kind === 'turn' ? 'angle' : 'size'](value, {
      decimals: 1,
      ...(sd === undefined ? {} : { sd }),
    });
  const readings = plan.setups
    .map((setup) => ({ setup, taken: record.taken[setup.id] ?? [] }))
    .filter(({ taken }) => taken.length > 0);
  return (
    <details className="working optional">
      <summary>Show the working</summary>
      <dl>
        <dt>What goes in, round {round}</dt>
        <dd>
          {readings.length === 0 ? 'No readings in this round. ' : null}
          {readings
            .map(({ setup, taken }) => {
              const count = taken.reduce((sum, one) => sum + one.readings.length, 0);
              return `${setup.name}: ${counted(count, 'reading')}`;
            })
            .join('; ')}
          {record.print ? '; the print, zone by zone' : ''}. Earlier rounds and what was scraped count too.
        </dd>
        {readings.flatMap(({ setup, taken }) =>
          taken.flatMap(({ bar }) =>
            bar
              ? barWorking(bar, units).map(({ what, formula, worked }) => (
                  <div key={`${setup.id} ${what}`}>
                    <dt>{capital(what)}</dt>
                    <dd>
                      <code>{formula}</code>. {worked}.
                    </dd>
                  </div>
                ))
              : [],
          ),
        )}
        {steer.estimate.sweeps.map((fit) => (
          <div key={fit.name}>
            <dt>{fit.name}, line through its readings</dt>
            <dd>
              <code>reading = start + slope × distance</code>, by least squares. Slope{' '}
              {words.angle(fit.slope_urad, { decimals: 1, sd: fit.slope_sd_urad })}.
              {fit.outliers.length > 0
                ? ` ${counted(fit.outliers.length, 'reading')} further than 4 sd from the line left out.`
                : ''}{' '}
              {fit.widen > 1 ? 'The scatter is larger than stated, so the doubt is widened by it.' : ''}
            </dd>
          </div>
        ))}
        <dt>{line.name} now</dt>
        <dd>
          {fine(line.value.value, line.value.sd)}. Readings, print and passes are put together by generalised
          least squares:{' '}
          <code>
            reading = s · (u of what rides − u of what is touched) − face slope × distance + constant
          </code>
          . Source: the contract; reversal as Evans, Hocken and Estler 1996.
        </dd>
        {target ? (
          <>
            <dt>Verdict</dt>
            <dd>
              Limits {fine(target.low)} to {fine(target.high)}. Within when the value and its whole doubt lie
              inside, outside when wholly beyond, else not proven. Source: ISO 14253-1 (rule, from memory). ±
              is two standard deviations, 19 times in 20.
            </dd>
          </>
        ) : null}
        <dt>Passes</dt>
        <dd>
          The fewest passes, by area, whose settled pose keeps every feature in its band; the part settles by{' '}
          <code>q = −(AᵀWA)⁻¹AᵀW d</code>. Least volume for the exact depths:{' '}
          {words.volume(steer.plan.volume_mm3)}.
        </dd>
      </dl>
    </details>
  );
}
