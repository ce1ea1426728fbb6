import './practice.css';
import { useState } from 'react';
import { capital } from '../../../shop/phrase.ts';
import { truthAsked } from '../../../shop/practise/practice-of.ts';
import { slipSentence, toldAndTrue } from '../../../shop/practise/truth-words.ts';
import { Wrong } from '../frame/notice.tsx';
import { type OpenJob, useAnswer, useWrite } from '../keep/jobs.ts';
import { useSettings } from '../keep/settings.ts';
import { useTruth, whyNot } from './ask.ts';

/** The truth of a practice machine beside what was told: hidden until it is asked for, and asked about once. */
export function Truth({ open }: { readonly open: OpenJob }) {
  const [asking, setAsking] = useState(false);
  const write = useWrite(open.id);
  if (truthAsked(open.job)) return <Shown open={open} />;
  return (
    <section className="truth" aria-label="Truth of the practice machine">
      <h3>Truth</h3>
      {asking ? (
        <>
          <p>Once seen it stays in sight, and the ledger says so. Look?</p>
          <div className="two">
            <button
              type="button"
              className="go small"
              onClick={() => write({ kind: 'truth shown', round: open.job.round })}
            >
              Look at it
            </button>
            <button type="button" className="second" onClick={() => setAsking(false)}>
              Not yet
            </button>
          </div>
        </>
      ) : (
        <div>
          <p className="quiet">This is a practice machine. What it truly is, is hidden.</p>
          <button type="button" className="third" onClick={() => setAsking(true)}>
            Show the truth
          </button>
        </div>
      )}
    </section>
  );
}

function Shown({ open }: { readonly open: OpenJob }) {
  const { job, id } = open;
  const { units } = useSettings();
  const { data: truth, error } = useTruth(open);
  const answer = useAnswer(id);
  const round = answer?.round;
  const was = round === undefined ? undefined : truth?.rounds.find((one) => one.round === round);
  const rows = answer?.steer?.ok && was ? toldAndTrue(job.plan, answer.steer, was, units) : [];
  return (
    <section className="truth" aria-label="Truth of the practice machine">
      <h3>Told and true{round === undefined ? '' : `, round ${round}`}</h3>
      {error ? <Wrong role="alert">{whyNot(error)}</Wrong> : null}
      {rows.length > 0 ? (
        <table>
          <thead>
            <tr>
              <th scope="col">
                <span className="hidden">What</span>
              </th>
              <th scope="col">told</th>
              <th scope="col">true</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.name}>
                <th scope="row">
                  {capital(row.name)}
                  <small>{row.unit}</small>
                </th>
                <td className="nb">{row.told}</td>
                <td>
                  <b>{row.true}</b>
                  {row.holds === undefined ? null : <small>{row.holds}</small>}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : (
        <p className="quiet">
          Nothing is told of this machine yet, so there is nothing to hold beside its truth.
        </p>
      )}
      {truth ? (
        <p>
          {truth.slips.length === 0
            ? 'Nothing went wrong on purpose so far.'
            : truth.slips.map((slip) => slipSentence(slip, job.plan, units)).join(' ')}
        </p>
      ) : null}
    </section>
  );
}
