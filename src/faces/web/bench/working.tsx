import type { RoundRecord } from '../../../core/ledger/round-record.ts';
import type { SteerAnswer } from '../../../core/plan/answer.ts';
import { sayDeviation } from '../../../core/quantity/say.ts';
import { saySlope } from '../../../core/quantity/slope.ts';
import type { FeatureLine } from '../../../shop/bench/feature-line.ts';
import { counted } from '../../../shop/phrase.ts';
import type { OpenJob } from '../keep/jobs.ts';

/** How the numbers of the screen came about: formula, inputs, source. */
export function Working(props: {
  readonly open: OpenJob;
  readonly steer: SteerAnswer;
  readonly record: RoundRecord;
  readonly line: FeatureLine;
}) {
  const { open, steer, record, line } = props;
  const { plan, round } = open.job;
  const { target, feature } = line.scale;
  const fine = (value: number, sd?: number) =>
    feature.kind === 'turn'
      ? saySlope(value, 'metric', { unit: 'urad', decimals: 1, ...(sd === undefined ? {} : { sd }) }).text
      : sayDeviation(value, 'metric', { decimals: 1, ...(sd === undefined ? {} : { sd }) }).text;
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
        {steer.estimate.sweeps.map((fit) => (
          <div key={fit.name}>
            <dt>{fit.name}, line through its readings</dt>
            <dd>
              <code>reading = start + slope × distance</code>, by least squares. Slope{' '}
              {saySlope(fit.slope_urad, 'metric', { unit: 'urad', decimals: 1, sd: fit.slope_sd_urad }).text}.
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
          {Math.round(steer.plan.volume_mm3)} mm³.
        </dd>
      </dl>
    </details>
  );
}
