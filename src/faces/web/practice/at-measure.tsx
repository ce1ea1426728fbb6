import './practice.css';
import type { Deed } from '../../../core/ledger/entry.ts';
import { roundRecord } from '../../../core/ledger/round-record.ts';
import type { Setup } from '../../../core/ledger/setup.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import { pushDrawing } from '../../../draw/push-drawing.ts';
import type { InstrumentShows } from '../../../shop/practise/practice-job.ts';
import { Figure } from '../figure.tsx';
import { Mark } from '../frame/mark.tsx';
import { Wrong } from '../frame/notice.tsx';
import { useWidth } from '../frame/width.ts';
import { type OpenJob, useWrite } from '../keep/jobs.ts';
import { useSettings } from '../keep/settings.ts';
import { useMeasured, whyNot } from './ask.ts';
import { shownDeviation, shownSlope, typedDeviation, typedSlope } from './shown-text.ts';

/** How far the finger pushes the plunger in, µm. */
const pushed_um = 420;

/** What the machine could not say, and why. */
const NotRead = ({ failure }: { readonly failure: Error | null }) =>
  failure ? <Wrong role="alert">{whyNot(failure)}</Wrong> : null;

/** The push test to look at: the indicator free and pushed in. Whether its number climbed or fell is for the eye. */
export function PushShown(props: {
  readonly open: OpenJob;
  readonly setup: string;
  readonly repeat: number;
  readonly units: UnitSystem;
}) {
  const { open, setup, repeat, units } = props;
  const { data, error } = useMeasured(open, repeat);
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const push = data?.setups.find((one) => one.setup === setup)?.push;
  const um = push === 'fell' ? -pushed_um : pushed_um;
  return (
    <div className="push-shown" ref={ref}>
      <NotRead failure={error} />
      {push ? (
        <Figure
          shape={pushDrawing({
            shows: shownDeviation(um, units === 'metric' ? 'um' : 'thou'),
            width: Math.min(width, 420),
          })}
        />
      ) : null}
    </div>
  );
}

/** Fills the cells of a card as if its readings were typed. */
export function ReadButton(props: {
  readonly open: OpenJob;
  readonly setup: Pick<Setup, 'id' | 'kind'>;
  readonly repeat: number;
  readonly onRead: (values: readonly number[]) => void;
}) {
  const { open, setup, repeat, onRead } = props;
  const { data, error } = useMeasured(open, repeat);
  const shown = data?.setups.find((one) => one.setup === setup.id);
  return (
    <div className="read-it">
      <NotRead failure={error} />
      <button
        type="button"
        className="second"
        disabled={!shown}
        onClick={() => (shown ? onRead(shown.values) : undefined)}
      >
        <Mark name="arrow down" size={20} />
        Read the {setup.kind === 'level' ? 'level' : 'indicator'}
      </button>
    </div>
  );
}

/** All that is left to measure, read at one go, signs settled: for whoever practises the plan and not the signs. */
export function ReadAll({ open }: { readonly open: OpenJob }) {
  const { id, job } = open;
  const { units } = useSettings();
  const write = useWrite(id);
  const { data, error } = useMeasured(open, 0);
  const record = roundRecord(job.live, job.round);
  const left = job.plan.setups.filter((setup) => !record.taken[setup.id]);
  if (left.length === 0) return null;
  const readAll = () => {
    for (const setup of left) {
      const shown = data?.setups.find((one) => one.setup === setup.id);
      if (shown) write(deedOf(setup, shown, job.round, units));
    }
  };
  return (
    <section className="read-all" aria-label="Practice">
      <NotRead failure={error} />
      <button type="button" className="second" disabled={!data} onClick={readAll}>
        <Mark name="arrow down" size={20} />
        Read every set-up
      </button>
      <p className="quiet">
        Practice machine: one set-up after the other teaches the signs. All at once, the push test is answered
        for you.
      </p>
    </section>
  );
}

function deedOf(setup: Setup, shown: InstrumentShows, round: number, units: UnitSystem): Deed {
  const at = { round, setup: setup.id };
  if (setup.kind === 'level') {
    const unit = units === 'metric' ? 'um/m' : 'thou/12 in';
    const typed = shownSlope(shown.values[0]!, unit);
    return { kind: 'level read', ...at, record: {}, reading: { typed, value: typedSlope(typed, unit) } };
  }
  const unit = units === 'metric' ? 'um' : 'tenths';
  const readings = shown.values.map((um) => {
    const typed = shownDeviation(um, unit);
    return { typed, value: typedDeviation(typed, unit) };
  });
  const record = shown.push ? { push: shown.push } : {};
  return setup.kind === 'height'
    ? { kind: 'height read', ...at, record, reading: readings[0]! }
    : { kind: 'sweep taken', ...at, record, readings };
}
