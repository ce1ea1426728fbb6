import { useMemo, useState } from 'react';
import { Link } from 'wouter';
import { type KitItem, kitOf } from '../../../core/ledger/kit-ledger.ts';
import { surveysOf } from '../../../core/ledger/survey-record.ts';
import { rowGauge } from '../../../draw/row-gauge.ts';
import { type JobTargetKit, jobKit } from '../../../shop/kit/job-kit.ts';
import { surveyKit } from '../../../shop/kit/survey-kit.ts';
import { capital } from '../../../shop/phrase.ts';
import { Figure } from '../figure.tsx';
import { fromAddress, keepInAddress } from '../frame/address.ts';
import { Mark } from '../frame/mark.tsx';
import { NotHere } from '../frame/not-here.tsx';
import { useJob, useJobLines } from '../keep/jobs.ts';
import { useSettings } from '../keep/settings.ts';

/** What the kit can prove of a job's targets: of the one that was open last, or another that is chosen here. */
export function JobTargets({ items }: { readonly items: readonly KitItem[] }) {
  const { lastJob } = useSettings();
  const { data, error } = useJobLines();
  const [chosen, setChosen] = useState(() => fromAddress().job);
  const jobs = data?.jobs ?? [];
  const id = (jobs.find((job) => job.id === chosen) ?? jobs.find((job) => job.id === lastJob) ?? jobs[0])?.id;
  return (
    <section className="kit-targets">
      <h2>Can it prove the job’s targets?</h2>
      {error ? <p className="quiet">The shop’s list of jobs is out of reach.</p> : null}
      {data && jobs.length === 0 ? (
        <p>
          There is no job yet to hold the kit against.{' '}
          <Link className="third" href="/new">
            New job
          </Link>
        </p>
      ) : null}
      {id === undefined ? null : (
        <>
          <div className="field">
            <label htmlFor="kit-job">For the job</label>
            <select
              id="kit-job"
              value={id}
              onChange={(event) => {
                setChosen(event.target.value);
                keepInAddress({ job: event.target.value });
              }}
            >
              {jobs.map((job) => (
                <option key={job.id} value={job.id}>
                  {job.title}
                </option>
              ))}
            </select>
          </div>
          <Targets key={id} id={id} items={items} />
        </>
      )}
    </section>
  );
}

function Targets({ id, items }: { readonly id: string; readonly items: readonly KitItem[] }) {
  const { open, failure } = useJob(id);
  const { units } = useSettings();
  const told = useMemo(
    () =>
      open
        ? [
            ...jobKit(open.job.plan, kitOf(items), units),
            ...surveyKit(surveysOf(open.job.live).values(), kitOf(items), units),
          ]
        : undefined,
    [open, items, units],
  );
  if (!told)
    return (
      <NotHere
        what="this job"
        failure={failure}
        missing={<p className="quiet">This job is not in the shop’s file any more. Choose another.</p>}
      />
    );
  return (
    <>
      <ul className="rows">
        {told.map((one) => (
          <li key={one.feature} className="kit-target">
            <TargetLine told={one} />
          </li>
        ))}
      </ul>
      <p className="quiet">
        The dashed pin is a result in the middle of the band, as wide as its doubt: ±, two standard
        deviations. Room is from there to the nearer limit; four of the doubt in it proves well (common
        practice).
      </p>
    </>
  );
}

function TargetLine({ told }: { readonly told: JobTargetKit }) {
  if (told.can === 'not told')
    return (
      <>
        <div className="kit-target-head">
          <h3>{capital(told.feature)}</h3>
          <Figure
            shape={rowGauge({
              title: `${told.feature}: nothing in the jaws`,
              width: 180,
              height: 36,
              band: { low: -1, high: 1 },
            })}
          />
        </div>
        <p>{told.why}</p>
      </>
    );
  const { proof } = told;
  const picture = rowGauge({
    title: `${told.feature}: room ${proof.room_text}, doubt ${proof.doubt_text}`,
    width: 180,
    height: 36,
    band: { low: -proof.room, high: proof.room },
    forecast: { value: 0, doubt: proof.doubt },
  });
  return (
    <>
      <div className="kit-target-head">
        <h3>
          {capital(told.feature)}
          <span className="kit-can">
            <Mark name={canMark[told.can]} size={22} />
            {canWords[told.can]}
          </span>
        </h3>
        <Figure shape={picture} />
      </div>
      <p>{unbroken(proof.found_text)}</p>
      {proof.better_text === undefined ? null : <p className="kit-better">{unbroken(proof.better_text)}</p>}
      <p className="quiet">
        With {told.by.join(' and ')}, as the card “{told.setup}” says.
      </p>
      <details className="optional">
        <summary>Where the doubt comes from</summary>
        <div>
          <ul className="rows">
            {proof.part_texts.map((part) => (
              <li key={part.what} className="kit-part">
                <span>{part.what}</span>
                <span className="nb">{part.text}</span>
              </li>
            ))}
          </ul>
        </div>
      </details>
    </>
  );
}

/** A doubt stays with its ±. */
const unbroken = (text: string): string => text.replaceAll('± ', '±\u202f');

const canWords: Record<Exclude<JobTargetKit['can'], 'not told'>, string> = {
  easily: 'proven easily',
  yes: 'proven',
  'when clear of the limits': 'only clear of the limits',
  'only near the middle': 'only near the middle',
  no: 'cannot be proven',
};

const canMark = {
  easily: 'within',
  yes: 'within',
  'when clear of the limits': 'not proven high',
  'only near the middle': 'not proven high',
  no: 'caution',
} as const;
