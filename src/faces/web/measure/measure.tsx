import { Link, Redirect, useLocation } from 'wouter';
import type { Deed } from '../../../core/ledger/entry.ts';
import { roundRecord } from '../../../core/ledger/round-record.ts';
import { capital, counted } from '../../../shop/phrase.ts';
import { practiceOf } from '../../../shop/practise/practice-of.ts';
import { GoLink } from '../frame/go.tsx';
import { JobScreen } from '../frame/job-screen.tsx';
import { clock } from '../frame/kept.tsx';
import { Mark } from '../frame/mark.tsx';
import { type OpenJob, useWrite } from '../keep/jobs.ts';
import { ReadAll } from '../practice/lazy.tsx';
import { SingleCard } from './single-card.tsx';
import { SweepCard } from './sweep-card.tsx';

const setupPath = (id: string, setup: string, repeat = 0): string =>
  `/job/${encodeURIComponent(id)}/measure/${encodeURIComponent(setup)}${repeat > 0 ? `/${repeat}` : ''}`;

/** The set-ups of this round: what is taken, what is not, and another take of either. */
export const MeasureScreen = ({ id }: { readonly id: string }) => (
  <JobScreen id={id}>{(open) => <Setups open={open} />}</JobScreen>
);

function Setups({ open }: { readonly open: OpenJob }) {
  const { id, job } = open;
  const record = roundRecord(job.live, job.round);
  const write = useWrite(id);
  const next = job.plan.setups.find((setup) => !record.taken[setup.id]);
  return (
    <main className="page narrow with-foot">
      <p className="say">Round {job.round}. Each set-up tells one thing; taken twice it tells it better.</p>
      <ul className="rows">
        {job.plan.setups.map((setup) => {
          const taken = record.taken[setup.id] ?? [];
          return (
            <li key={setup.id} className="setup-line">
              <Link className="choice" href={setupPath(id, setup.id)}>
                <Mark name={taken.length > 0 ? 'tick' : 'arrow right'} size={24} />
                <span>
                  <b>{capital(setup.name)}</b>
                  <small>{taken.length > 0 ? `taken ${clock(taken[0]!.at)}` : setup.question}</small>
                </span>
                <span />
              </Link>
              {taken.length > 0 ? (
                <div className="beside">
                  <Link
                    className="third"
                    href={setupPath(id, setup.id, Math.max(...taken.map((one) => one.repeat)) + 1)}
                  >
                    Seat it again and repeat
                  </Link>
                  {taken.map((one) => (
                    <button
                      key={one.entry}
                      type="button"
                      className="third"
                      onClick={() => write({ kind: 'undone', entry: one.entry })}
                    >
                      <Mark name="undo" size={18} />
                      Undo {one.repeat > 0 ? `repeat ${one.repeat}` : 'it'},{' '}
                      {counted(one.readings.length, 'reading')}
                    </button>
                  ))}
                </div>
              ) : null}
            </li>
          );
        })}
      </ul>
      {practiceOf(job) ? <ReadAll open={open} /> : null}
      <footer className="foot">
        {next ? (
          <GoLink to={setupPath(id, next.id)} end={next.name}>
            Set it up
          </GoLink>
        ) : (
          <GoLink to={`/job/${encodeURIComponent(id)}${record.print ? '' : '/print'}`}>
            {record.print ? 'Back to the bench' : 'Enter the print'}
          </GoLink>
        )}
      </footer>
    </main>
  );
}

/** One set-up card of the round being worked. */
export const SetupScreen = (props: {
  readonly id: string;
  readonly setup: string;
  readonly repeat: number;
}) => {
  const { id, setup: wanted, repeat } = props;
  return (
    <JobScreen
      id={id}
      title={({ job }) => capital(job.plan.setups.find((one) => one.id === wanted)?.name ?? 'Set-up')}
    >
      {(open) => (
        <Card key={`${open.job.round} ${wanted} ${repeat}`} open={open} wanted={wanted} repeat={repeat} />
      )}
    </JobScreen>
  );
};

function Card(props: { readonly open: OpenJob; readonly wanted: string; readonly repeat: number }) {
  const { open, wanted, repeat } = props;
  const { id, job } = open;
  const write = useWrite(id);
  const [, go] = useLocation();
  const setup = job.plan.setups.find((one) => one.id === wanted);
  if (!setup) return <Redirect to={`/job/${encodeURIComponent(id)}/measure`} />;
  const keep = (deed: Deed) => {
    write(deed);
    go(`/job/${encodeURIComponent(id)}`);
  };
  const practice = practiceOf(job) ? { practice: open } : {};
  const shared = { jobId: id, plan: job.plan, round: job.round, repeat, onKeep: keep, ...practice };
  return (
    <main className="page with-foot card-page">
      {repeat > 0 ? (
        <p className="quiet">
          Repeat {repeat} of this set-up in round {job.round}.
        </p>
      ) : null}
      {setup.kind === 'sweep' ? (
        <SweepCard setup={setup} {...shared} />
      ) : (
        <SingleCard setup={setup} {...shared} />
      )}
    </main>
  );
}
