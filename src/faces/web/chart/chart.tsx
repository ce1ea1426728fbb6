import { useMemo, useState } from 'react';
import { useParams } from 'wouter';
import { type ChartRecord, chartRecordNow, resultsOf } from '../../../core/ledger/rebuild-record.ts';
import { capital } from '../../../shop/phrase.ts';
import { JobScreen } from '../frame/job-screen.tsx';
import { draftKey, useDraft } from '../keep/draft.ts';
import { type OpenJob, useWrite } from '../keep/jobs.ts';
import { Refusing } from '../keep/server.ts';
import { useSettings } from '../keep/settings.ts';
import { useChart, useLists, whyNot } from './asked.ts';
import { type ChartDraft, emptyDraft, resultKey, resultOf, typedOf, withoutLine } from './chart-draft.ts';
import { Choices } from './choices.tsx';
import type { LineEntry } from './line.tsx';
import { Lines } from './lines.tsx';
import { PaperMaker } from './paper-maker.tsx';
import { PutTogether } from './put-together.tsx';
import { Remaining, Told } from './told.tsx';
import './chart.css';
import { Wrong } from '../frame/notice.tsx';

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
  const write = useWrite(open.id);
  const { live } = open.job;
  const record = useMemo(() => chartRecordNow(live), [live]);
  const kept = useMemo(() => resultsOf(live), [live]);
  const list = lists.data?.find((one) => one.id === record.list);
  const file = useMemo(() => ({ typed: typedOf(draft, record.list) }), [draft, record.list]);
  const { data, error } = useChart(open, file, units, lists.data !== undefined);
  const set = (chart: ChartRecord) => write({ kind: 'chart set', chart });
  const [opened, setOpened] = useState<string>();
  const failure = lists.error ?? error;
  const report = data?.report;

  /** Where a line's own result is typed; a line that the job measured has none. */
  const entryOf = (id: string): LineEntry | undefined => {
    if (!data || data.by_job.includes(id)) return undefined;
    const key = resultKey(record.list, id);
    return {
      typed: draft.results[key] ?? {},
      instrument: draft.instruments[key] ?? '',
      kept: kept.filter((one) => one.test === id),
      onType: (when, typed) =>
        keep({ ...draft, results: { ...draft.results, [key]: { ...draft.results[key], [when]: typed } } }),
      onKeep: () => {
        const on = new Date().toISOString().slice(0, 10);
        for (const when of ['first', 'final'] as const) {
          const result = resultOf(draft.results[key]?.[when], draft.instruments[key]);
          if (result) write({ kind: 'result taken', test: id, when, result: { ...result, on } });
        }
        keep(withoutLine(draft, key));
      },
      onUndo: (entry) => write({ kind: 'undone', entry }),
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
      {failure ? <Wrong role="alert">{whyNot(failure)}</Wrong> : null}
      <Choices
        lists={lists.data ?? []}
        list={list}
        draft={draft}
        units={units}
        onChange={keep}
        record={record}
        onSet={set}
      />
      {report ? (
        <>
          <PutTogether id={open.id} record={record} report={report} units={units} onSet={set} />
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
