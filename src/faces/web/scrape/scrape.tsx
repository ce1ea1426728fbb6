import { useState } from 'react';
import { Link, Redirect, useLocation } from 'wouter';
import { lastTurned, roundRecord } from '../../../core/ledger/round-record.ts';
import type { SteerAnswer } from '../../../core/plan/answer.ts';
import { alarmState } from '../../../shop/bench/alarm-state.ts';
import { notAnswered } from '../../../shop/bench/not-answered.ts';
import { passesOf, zonesByPad } from '../../../shop/bench/pass.ts';
import { counted } from '../../../shop/phrase.ts';
import { practiceOf } from '../../../shop/practise/practice-of.ts';
import { HowTurned } from '../bench/how-turned.tsx';
import { PartMap } from '../bench/part-map.tsx';
import { WorkedAnew } from '../bench/worked-anew.tsx';
import type { ZonePlace } from '../figure.tsx';
import { GoButton } from '../frame/go.tsx';
import { JobScreen } from '../frame/job-screen.tsx';
import { clock } from '../frame/kept.tsx';
import { Mark, Strokes } from '../frame/mark.tsx';
import { WorkingOnIt } from '../frame/working-on-it.tsx';
import { type OpenJob, useAnswering, useOutbox, useWrite } from '../keep/jobs.ts';

/** At the bench with the scraper: one pass at a time, one direction of stroke, the zones lit, one thumb. */
export const ScrapeScreen = ({ id }: { readonly id: string }) => (
  <JobScreen id={id}>{(open) => <Scrape open={open} />}</JobScreen>
);

function Scrape({ open }: { readonly open: OpenJob }) {
  const { id, job } = open;
  const { answer, failure } = useAnswering(id);
  const { waiting } = useOutbox();
  const record = roundRecord(job.live, job.round);
  const bench = `/job/${encodeURIComponent(id)}`;
  if (!answer?.steer) return <WorkingOnIt failure={failure} />;
  const { steer } = answer;
  const unsettled = steer.ok && steer.alarm && !alarmState(steer.alarm, record.causes).settled;
  // No pass is begun by a plan that its readings have left behind, unless they cannot reach the shop now.
  const begins = record.passes.length === 0 && !waiting.some((parcel) => parcel.job === id);
  if (begins && notAnswered(job, answer.seq))
    return (
      <main className="page" aria-busy="true">
        <WorkedAnew open={open} seq={answer.seq} />
      </main>
    );
  if (!steer.ok || unsettled) return <Redirect to={bench} />;
  if (record.turned === undefined) return <HowTurned open={open} />;
  return <Passes open={open} steer={steer} record={record} bench={bench} />;
}

function Passes(props: {
  readonly open: OpenJob;
  readonly steer: SteerAnswer;
  readonly record: ReturnType<typeof roundRecord>;
  readonly bench: string;
}) {
  const { open, steer, record, bench } = props;
  const { plan, round, live } = open.job;
  const write = useWrite(open.id);
  const [, go] = useLocation();
  const [other, setOther] = useState<Readonly<Record<string, readonly number[]>>>();
  const planned = passesOf(steer.plan.zones);
  const made = record.passes.length;
  const now = planned[made];
  const spot = steer.plan.action === 'spot';
  const turned = lastTurned(live);
  const passes = zonesByPad(steer.plan.zones, 'passes_now');
  const last = record.passes.at(-1);
  const undo = last ? (
    <button type="button" className="third" onClick={() => write({ kind: 'undone', entry: last.entry })}>
      <Mark name="undo" size={20} />
      Undo pass {last.pass}
    </button>
  ) : (
    <span />
  );

  if (!now)
    return (
      // A screen of its own: a second Enter on the last pass must not set the part back.
      <main key="all made" className="page with-foot">
        <div className="pair">
          <div>
            <p className="say">
              <b>{counted(made, 'pass', 'passes')} made.</b> Clean it, wipe the ways, set it back. Then sweep
              and print again.
            </p>
            <Tally planned={planned} record={record} />
          </div>
          <PartMap title="Passes by zone" plan={plan} turned={turned} show={{ kind: 'passes', passes }} />
        </div>
        <footer className="foot">
          <div className="beside">
            {undo}
            <Link className="third" href={bench}>
              Back to the bench
            </Link>
          </div>
          <GoButton
            onPress={() => {
              write({ kind: 'round closed', round });
              go(bench);
            }}
            end="measure again"
          >
            Set it back: start round {round + 1}
          </GoButton>
        </footer>
      </main>
    );

  const done = (zones: Readonly<Record<string, readonly number[]>>) => {
    write({ kind: 'pass made', round, pass: made + 1, ...(spot ? { spot: true } : {}), zones });
    setOther(undefined);
  };
  const toggle = (place: ZonePlace) => {
    if (!other) return;
    const row = other[place.pad]!;
    setOther({ ...other, [place.pad]: row.map((one, z) => (z === place.zone ? 1 - one : one)) });
  };
  return (
    <main className="page with-foot">
      <div className="pair">
        <div>
          <div className="pass-head">
            <div>
              <h2 className="num big">
                {spot ? 'Spot' : 'Pass'} {made + 1} <span className="of">of {planned.length}</span>
              </h2>
              <p className="say">
                {other ? (
                  'Tap each zone you did go over. Ink is done, dotted is not.'
                ) : spot ? (
                  <>
                    Strokes this way. Take off only the <b>blue</b> in the{' '}
                    <b>{counted(now.zones, 'outlined zone')}</b>.
                  </>
                ) : (
                  <>
                    Strokes this way. Work the <b>{counted(now.zones, 'outlined zone')}</b> once over, leave
                    the rest.
                  </>
                )}
              </p>
            </div>
            <Strokes pass={made + 1} size={72} />
          </div>
          {practiceOf(open.job) ? (
            <p className="quiet">
              Practice: the simulated machine is scraped. What a pass took shows when you measure again.
            </p>
          ) : null}
        </div>
        <div>
          <PartMap
            title={`Pass ${made + 1}: the zones to work`}
            plan={plan}
            turned={turned}
            show={other ? { kind: 'passes', passes: other } : { kind: 'pass', pass: made + 1, passes }}
            {...(other
              ? {
                  zones: {
                    onZone: toggle,
                    pressed: (place: ZonePlace) => other[place.pad]?.[place.zone] === 1,
                  },
                }
              : {})}
          />
          <Tally planned={planned} record={record} />
        </div>
      </div>
      <footer className="foot">
        <div className="beside">
          {undo}
          <button
            type="button"
            className="third"
            onClick={() => setOther(other ? undefined : { ...now.byPad })}
          >
            {other ? 'As planned after all' : 'I did something else'}
          </button>
        </div>
        <GoButton onPress={() => done(other ?? now.byPad)} mark={<Strokes pass={made + 1} size={26} />}>
          {other ? 'Keep it as tapped' : `Pass ${made + 1} done`}
        </GoButton>
      </footer>
    </main>
  );
}

/** Which passes are made, which is now, how many zones each. */
const Tally = (props: {
  readonly planned: ReturnType<typeof passesOf>;
  readonly record: ReturnType<typeof roundRecord>;
}) => (
  <ol className="tally">
    {props.planned.map((pass, i) => {
      const made = props.record.passes[i];
      const now = i === props.record.passes.length;
      return (
        <li key={pass.pass} className={made ? 'done' : now ? 'now' : ''}>
          <b>
            {pass.pass}
            {made ? ' done' : now ? ' now' : ''}
          </b>
          <span>{made ? clock(made.at) : counted(pass.zones, 'zone')}</span>
        </li>
      );
    })}
  </ol>
);
