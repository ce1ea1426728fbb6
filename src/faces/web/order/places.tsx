import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { benchesOf } from '../../../core/ledger/rebuild-record.ts';
import type { StepPlace } from '../../../core/order/machine.ts';
import { benchDoor } from '../../../shop/order/bench-door.ts';
import type { StepShown } from '../../../shop/order/order.ts';
import { capital } from '../../../shop/phrase.ts';
import { Choice } from '../frame/choice.tsx';
import { Mark } from '../frame/mark.tsx';
import { Wrong } from '../frame/notice.tsx';
import { useJobLines } from '../keep/jobs.ts';
import { newId } from '../keep/outbox.ts';
import { openBench, whyNoBench } from './open-bench.ts';
import type { OpenMachine } from './whole.tsx';

const names: Record<StepPlace['screen'], string> = {
  survey: 'Survey',
  chart: 'Chart',
  heights: 'Heights',
  axis: 'Axes',
  gib: 'Gibs and dovetails',
  sum: 'Sum',
  kit: 'Kit',
};

function addressOf(job: string, step: string, place: StepPlace): string {
  const base = `/job/${encodeURIComponent(job)}`;
  switch (place.screen) {
    case 'sum':
      return `/sums/${encodeURIComponent(place.sum!)}`;
    case 'kit':
      return '/kit';
    case 'chart':
      return `${base}/chart`;
    default:
      return `${base}/${place.screen}?step=${encodeURIComponent(step)}`;
  }
}

/** Where a step's numbers are taken: its bench, and the screens that its machine names. */
export function StepPlaces({ open, step }: { readonly open: OpenMachine; readonly step: StepShown }) {
  const tests = step.proofs.flatMap((proof) => proof.test ?? []);
  const chart: StepPlace[] = step.opens.some((one) => one.screen === 'chart')
    ? []
    : tests.length > 0
      ? [{ screen: 'chart', what: 'results of its tests' }]
      : [];
  const places = [...step.opens, ...chart];
  if (!step.bench && places.length === 0)
    return <p className="quiet">Nothing is measured on another screen: write below what was found.</p>;
  return (
    <section aria-labelledby="step-places">
      <h2 id="step-places">Where it is done</h2>
      <ul className="rows">
        {step.bench ? <BenchRow open={open} step={step} slide={step.bench.slide} /> : null}
        {places.map((place) => (
          <li key={`${place.screen} ${place.what}`}>
            <Choice
              name={names[place.screen]}
              note={capital(place.what)}
              href={addressOf(open.id, step.id, place)}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The step's bench: a job of its own with the step's set-ups, targets and cautions, made when it is first opened. */
function BenchRow(props: { readonly open: OpenMachine; readonly step: StepShown; readonly slide: string }) {
  const { open, step, slide } = props;
  const [, go] = useLocation();
  const [wrong, setWrong] = useState<string>();
  const [fresh] = useState(newId);
  const lines = useJobLines().data?.jobs;
  const job = benchesOf(open.job.live).get(step.id);
  const line = lines?.find((one) => one.id === job);
  const openIt = async () => {
    try {
      go(`/job/${encodeURIComponent(await openBench(open.id, step.id, fresh))}`);
    } catch (failure) {
      setWrong(whyNoBench(failure));
    }
  };
  const words = (
    <>
      <span>
        <b>Bench</b>
        <small>{benchDoor(slide, job !== undefined, line?.rounds)}</small>
      </span>
      <span />
      <Mark name="arrow right" size={20} />
    </>
  );
  return (
    <li>
      {job === undefined ? (
        <button type="button" className="choice" onClick={() => void openIt()}>
          {words}
        </button>
      ) : (
        <Link className="choice" href={`/job/${encodeURIComponent(job)}`}>
          {words}
        </Link>
      )}
      {wrong === undefined ? null : <Wrong role="alert">{wrong}</Wrong>}
    </li>
  );
}
