import { useMemo, useState } from 'react';
import { useParams } from 'wouter';
import { capital } from '../../../shop/phrase.ts';
import { JobScreen } from '../frame/job-screen.tsx';
import { Mark } from '../frame/mark.tsx';
import { draftKey, useDraft } from '../keep/draft.ts';
import type { OpenJob } from '../keep/jobs.ts';
import { Refusing } from '../keep/server.ts';
import { useSettings } from '../keep/settings.ts';
import { useChart, useLists, whyNot } from './asked.ts';
import { type ChartDraft, emptyDraft, fileOf, resultKey } from './chart-draft.ts';
import { Choices } from './choices.tsx';
import type { LineEntry } from './line.tsx';
import { Lines } from './lines.tsx';
import { PaperMaker } from './paper-maker.tsx';
import { Remaining, Told } from './told.tsx';
import './chart.css';

/** The acceptance chart of a job: what is proven, what is not, and the paper to keep. */
export function ChartScreen() {
  const { id = '' } = useParams<{ id: string }>();
  return (
    <JobScreen key={id} id={id} title={() => 'Chart'}>
      {(open) => <Chart open={open} />}
    </JobScreen>
  );
}

function Chart({ open }: { readonly open: OpenJob }) {
  const { units } = useSettings();
  const [draft, keep] = useDraft<ChartDraft>(draftKey(open.id, 'chart'), emptyDraft);
  const lists = useLists();
  const list = lists.data?.find((one) => one.id === draft.list);
  const file = useMemo(() => fileOf(draft, list), [draft, list]);
  const { data, error } = useChart(open, file, units, lists.data !== undefined);
  const [opened, setOpened] = useState<string>();
  const failure = lists.error ?? error;
  const report = data?.report;

  /** Where a line's own result is typed; a line that the job measured has none. */
  const entryOf = (id: string): LineEntry | undefined => {
    if (!list || !data || data.by_job.includes(id)) return undefined;
    const key = resultKey(list.id, id);
    return {
      typed: draft.results[key] ?? {},
      instrument: draft.instruments[key] ?? '',
      onType: (when, typed) =>
        keep({ ...draft, results: { ...draft.results, [key]: { ...draft.results[key], [when]: typed } } }),
      onInstrument: (text) => keep({ ...draft, instruments: { ...draft.instruments, [key]: text } }),
    };
  };

  return (
    <main className="page chart-page">
      <header className="chart-head">
        <div>
          <h2>Acceptance chart: {report?.title ?? open.job.plan.title}</h2>
          {report?.note ? <p className="quiet">{report.note}</p> : null}
          <p className="say" aria-live="polite">
            {report?.sentence ?? 'The chart is being worked out.'}
          </p>
        </div>
        {report ? (
          <dl className="chart-facts">
            {report.facts.map(([key, value]) => (
              <div key={key}>
                <dt>{key}</dt>
                <dd>{capital(value)}</dd>
              </div>
            ))}
          </dl>
        ) : null}
      </header>
      {failure ? (
        <p className="wrong" role="alert">
          <Mark name="caution" size={20} />
          <span>{whyNot(failure)}</span>
        </p>
      ) : null}
      <Choices lists={lists.data ?? []} list={list} draft={draft} units={units} onChange={keep} />
      {report ? (
        <>
          <Lines
            report={report}
            units={units}
            entryOf={entryOf}
            opened={opened}
            onOpen={(id, isOpen) => setOpened((now) => (isOpen ? id : now === id ? undefined : now))}
          />
          <Remaining report={report} onOpen={setOpened} />
          <PaperMaker
            id={open.id}
            title={report.title}
            file={file}
            units={units}
            paper={draft.paper ?? (units === 'inch' ? 'letter' : 'a4')}
            onPaper={(paper) => keep({ ...draft, paper })}
            refused={error instanceof Refusing}
          />
          <Told report={report} />
        </>
      ) : null}
    </main>
  );
}
