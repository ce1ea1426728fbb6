import type { NoAnswer } from '../../../core/plan/problem.ts';
import { sayDeviation } from '../../../core/quantity/say.ts';
import { saySlope } from '../../../core/quantity/slope.ts';
import { GoLink } from '../frame/go.tsx';
import type { BenchView } from './bench.tsx';

/** No answer exists, or not yet: which limit binds, by how much, and the ways out. */
export function NoAnswerBench({ view, steer }: { readonly view: BenchView; readonly steer: NoAnswer }) {
  const { open, units } = view;
  const base = `/job/${encodeURIComponent(open.id)}`;
  const short = (limit: NoAnswer['limits'][number]) =>
    limit.unit === 'urad'
      ? saySlope(limit.short, units, { signed: false }).text
      : sayDeviation(limit.short, units, { signed: false }).text;
  const limits = steer.why === 'limits';
  const open1 = open.job.plan.setups.find((setup) => !view.record.taken[setup.id]);
  return (
    <main className="page with-foot narrow">
      <p className="say">
        {limits ? (
          <>
            <b>Scraping cannot reach this.</b>{' '}
            {steer.limits.length === 1 ? 'One limit binds.' : 'These limits bind.'}
          </>
        ) : (
          <>
            <b>No answer yet.</b> {steer.text}.
          </>
        )}
      </p>
      <ul className="rows">
        {steer.limits.map((limit) => (
          <li className="what" key={`${limit.kind} ${limit.name}`}>
            <span>{limit.name}</span>
            <span>
              <b>
                {limit.kind === 'stock'
                  ? `stock is short by ${short(limit)}`
                  : limit.kind === 'sink'
                    ? `would sink ${short(limit)} too far`
                    : `stays ${short(limit)} from its aim`}
              </b>
            </span>
            <small>
              {limit.kind === 'stock'
                ? 'A new liner there reaches the aim. It costs a day and its cure.'
                : limit.kind === 'sink'
                  ? 'Raise the part on new liner, or lower what it must not foul.'
                  : 'Metal would have to be put on. Reline, or take a limit further from the aim.'}
            </small>
          </li>
        ))}
      </ul>
      <footer className="foot">
        <p>Nothing is lost. A limit that was entered wrongly can be undone in the ledger.</p>
        <GoLink
          to={open1 ? `${base}/measure/${encodeURIComponent(open1.id)}` : `${base}/measure`}
          end={open1 ? open1.name : 'this round'}
        >
          Measure again
        </GoLink>
      </footer>
    </main>
  );
}
