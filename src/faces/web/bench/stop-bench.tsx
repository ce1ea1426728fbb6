import { Link } from 'wouter';
import { benchOf } from '../../../core/ledger/rebuild-record.ts';
import { lastTurned } from '../../../core/ledger/round-record.ts';
import type { SteerAnswer } from '../../../core/plan/answer.ts';
import { stopSentence } from '../../../shop/bench/bench-sentence.ts';
import { counted } from '../../../shop/phrase.ts';
import { Mark } from '../frame/mark.tsx';
import { Words } from '../frame/phrase.tsx';
import { useWrite } from '../keep/jobs.ts';
import { stepAddress } from '../order/step-address.ts';
import { BearingLine } from './bearing-line.tsx';
import { type BenchView, linesOf } from './bench.tsx';
import { DeedFoot } from './deed-foot.tsx';
import { FeatureRow } from './feature-rows.tsx';
import { PartMap } from './part-map.tsx';
import { PracticeTruth } from './practice-truth.tsx';
import { Working } from './working.tsx';

/** Stop: one word, then the limits, the print, and one button that signs the lines. */
export function StopBench({ view, steer }: { readonly view: BenchView; readonly steer: SteerAnswer }) {
  const { open, record, deed } = view;
  const { plan, round, live } = open.job;
  const write = useWrite(open.id);
  const { lines, lead } = linesOf(view, steer.estimate.features);
  const limits = plan.targets.length + 1;
  const step = benchOf(live);
  return (
    <>
      <section className="banner blue" aria-label="Stop">
        <Mark name="stop" size={64} />
        <div>
          <h2>Stop.</h2>
          <p>{record.signed ? 'The lines are signed.' : `All ${limits} limits are proven.`}</p>
        </div>
      </section>
      {/* What was the button that signs goes: the keyboard begins anew, chart first. */}
      <main key={record.signed ? 'signed' : 'open'} className="page with-foot">
        <div className="pair">
          <div>
            {lead ? (
              <p className="say">
                <Words phrase={stopSentence(lead)} />
              </p>
            ) : null}
            <div className="rows">
              {lines.map((line) => (
                <FeatureRow key={line.name} line={line} />
              ))}
              <BearingLine bearing={steer.plan.bearing} />
            </div>
            {lead ? (
              <Working open={open} steer={steer} record={record} line={lead} units={view.units} />
            ) : null}
            <PracticeTruth open={open} />
            <p className="quiet">Limits are geometry. A limit met is not a safety rating.</p>
          </div>
          <div>
            {record.print ? (
              <>
                <h2>Print, % blue by zone</h2>
                <PartMap
                  title="Print, % blue by zone"
                  plan={plan}
                  turned={lastTurned(live)}
                  show={{ kind: 'blue', share: record.print.share, round }}
                />
              </>
            ) : null}
          </div>
        </div>
        <DeedFoot
          id={open.id}
          deed={deed}
          end={record.signed ? undefined : counted(plan.targets.length, 'line')}
          {...(record.signed
            ? {
                beside: (
                  <>
                    <Link className="third" href={`/job/${encodeURIComponent(open.id)}/chart`}>
                      Chart, on screen and on paper
                    </Link>
                    {step ? (
                      <Link className="third" href={stepAddress(step.job, step.step)}>
                        Its step
                      </Link>
                    ) : null}
                  </>
                ),
              }
            : {})}
          {...(record.signed ? {} : { onPress: () => write({ kind: 'stop signed', round }) })}
        />
      </main>
    </>
  );
}
