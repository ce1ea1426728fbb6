import { lazy, Suspense } from 'react';
import { Link } from 'wouter';
import { steerInput } from '../../../core/ledger/steer-input.ts';
import type { SteerAnswer } from '../../../core/plan/answer.ts';
import { chanceWords } from '../../../core/prove/chance.ts';
import { offSentence, spotSentence } from '../../../shop/bench/bench-sentence.ts';
import { warningTexts } from '../../../shop/steer-warnings.ts';
import { useWrite } from '../keep/jobs.ts';
import { BearingHero, BearingLine } from './bearing-line.tsx';
import { type BenchView, linesOf } from './bench.tsx';
import { DeedFoot } from './deed-foot.tsx';
import { MapPane } from './map-pane.tsx';
import { NowPane } from './now-pane.tsx';
import { DoubtNotes, PassNotes } from './plan-notes.tsx';
import { PracticeTruth } from './practice-truth.tsx';
import { pastRounds } from './rounds.ts';
import { WorkedAnew } from './worked-anew.tsx';
import { Working } from './working.tsx';

const SolidPane = lazy(async () => ({ default: (await import('./solid-pane.tsx')).SolidPane }));

/** Something to scrape or spot: how far out on the left, the map and the deed on the right. */
export function PlanBench({ view, steer }: { readonly view: BenchView; readonly steer: SteerAnswer }) {
  const { open, units, record, answer, deed } = view;
  const { plan, round } = open.job;
  const write = useWrite(open.id);
  const { lead, lines, others } = linesOf(view, steer.estimate.features);
  const spot = steer.plan.action === 'spot';
  // A bearing that this round has not printed is not known: the alignment leads until it is.
  const bearingLeads = spot && steer.plan.bearing.verdict !== 'not printed';
  const measuring = deed.kind === 'measure' || deed.kind === 'print';
  const predicted = lead && steer.plan.predicted_now.find((one) => one.name === lead.name);
  const forecast = predicted && !measuring ? { ...predicted, label: `R${round + 1}` } : undefined;
  const chance = measuring ? undefined : chanceOf(steer);
  const setBack = deed.kind === 'set back';
  return (
    <main className="page bench-page">
      <div className="bench">
        {lead ? (
          <NowPane
            sentence={bearingLeads ? spotSentence : offSentence(lead)}
            hero={bearingLeads ? <BearingHero bearing={steer.plan.bearing} /> : undefined}
            lead={lead}
            others={bearingLeads ? lines : others}
            bearing={bearingLeads ? null : <BearingLine bearing={steer.plan.bearing} />}
            past={pastRounds(answer, lead.name, round)}
            now={`R${round}`}
            forecast={forecast}
            chance={chance}
            warnings={warningTexts(steer, steerInput(open.job).rounds.at(-1)!.sweeps, units)}
          />
        ) : null}
        <section className="do" aria-label="Where to scrape">
          <WorkedAnew open={open} seq={answer.seq} />
          <MapPane
            key={spot ? 'spot' : 'scrape'}
            open={open}
            record={record}
            steer={steer}
            units={units}
            first={spot ? 'print' : 'passes'}
          />
          <DeedFoot
            id={open.id}
            deed={deed}
            note={
              setBack || chance === undefined ? undefined : (
                <span className="narrow-only">
                  Then print and sweep. In the band: <b>{chanceWords(chance)}</b>.
                </span>
              )
            }
            {...(deed.kind === 'print'
              ? {
                  beside: (
                    <Link className="third" href={`/job/${encodeURIComponent(open.id)}/scrape`}>
                      Scrape without a print
                    </Link>
                  ),
                }
              : {})}
            {...(setBack ? { onPress: () => write({ kind: 'round closed', round }) } : {})}
          />
        </section>
        <div className="more">
          <div className="wide-only">
            <Suspense fallback={null}>
              <SolidPane plan={plan} steer={steer} />
            </Suspense>
          </div>
          <PracticeTruth open={open} />
          {measuring ? null : <PassNotes plan={plan} answer={steer} units={units} rounds={answer.rounds} />}
          {measuring || !lead ? null : <DoubtNotes answer={steer} line={lead} />}
          {open.job.plan.demo ? (
            <p className="quiet">
              This job is invented, to look round in and to try things on.{' '}
              <Link className="third" href="/new">
                Begin a job of your own
              </Link>
            </p>
          ) : null}
          {lead ? <Working open={open} steer={steer} record={record} line={lead} units={units} /> : null}
        </div>
      </div>
    </main>
  );
}

/** The least chance of any feature in its band once the passes on the map are made: all must come in. */
const chanceOf = (steer: SteerAnswer): number | undefined =>
  steer.plan.predicted_now.length > 0
    ? Math.min(...steer.plan.predicted_now.map((one) => one.chance_in_band))
    : undefined;
