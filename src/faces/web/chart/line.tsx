import { useMemo } from 'react';
import { Link } from 'wouter';
import type { KeptResult } from '../../../core/ledger/rebuild-record.ts';
import { chartGauge } from '../../../draw/chart-row.ts';
import type { LineShown } from '../../../shop/chart/line-shown.ts';
import { Figure } from '../figure.tsx';
import { VerdictWord } from '../frame/mark.tsx';
import type { Units } from '../keep/settings.ts';
import type { ResultTyped, When } from './chart-draft.ts';
import { TypedResult } from './typed-result.tsx';

/** What is typed on a line, and how it changes. */
export interface LineEntry {
  readonly typed: Readonly<Partial<Record<When, ResultTyped>>>;
  readonly instrument: string;
  readonly onType: (when: When, typed: ResultTyped) => void;
  readonly onInstrument: (text: string) => void;
  /** What the ledger holds of it. */
  readonly kept: readonly KeptResult[];
  /** Writes what is typed into the ledger. */
  readonly onKeep: () => void;
  readonly onUndo: (entry: string) => void;
}

const gaugeWidth = 148;

/** One line of the chart: what, limit, as found, now, pin and verdict; behind it how it is measured, and its own result. */
export function ChartLine(props: {
  readonly line: LineShown;
  readonly units: Units;
  /** Absent: the job measured it. */
  readonly entry: LineEntry | undefined;
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
}) {
  const { line, units, entry, open, onOpen } = props;
  const gauge = useMemo(() => chartGauge(line, gaugeWidth), [line]);
  return (
    <li className="chart-line" data-chart-line={line.number}>
      <span className="chart-number">{line.number}</span>
      <div className="chart-name">
        <h4>{line.name}</h4>
        {line.plus_text ? <p className="quiet">{line.plus_text}</p> : null}
        {line.direction ? (
          <p className="quiet">
            Permitted: {line.direction.allowed}, because {line.direction.reason}.
          </p>
        ) : null}
        {line.bench ? (
          <p className="quiet">
            From the <Link href={`/job/${encodeURIComponent(line.bench.job)}`}>{line.bench.text}</Link>
          </p>
        ) : null}
        {line.note && line.verdict !== 'not measured' ? <p className="chart-note">{line.note}</p> : null}
      </div>
      <p className="chart-limit">
        <span className="chart-word">Limit </span>
        <b>{line.limit_text}</b> <span className="unit">{line.unit_text}</span>
        <small>{line.source_text.split(':')[0]}</small>
        {line.worked_to_text ? <small>worked to {line.worked_to_text}</small> : null}
      </p>
      <p className="chart-value">
        <span className="chart-word">As found </span>
        {line.first?.text ?? <span className="unit">not taken</span>}
      </p>
      <p className="chart-value now">
        <span className="chart-word">Now </span>
        {line.is_final || !line.first ? (
          line.now ? (
            <b>{line.now.text}</b>
          ) : (
            <span className="unit">not taken</span>
          )
        ) : (
          <span className="unit">as found</span>
        )}
      </p>
      <div className="chart-gauge">
        <Figure shape={gauge} />
      </div>
      <p className="chart-verdict">
        {line.verdict === 'not measured' ? (
          <span className="unit">not measured</span>
        ) : (
          <VerdictWord verdict={line.verdict} side={line.side ?? 'high'} />
        )}
      </p>
      <details
        className="chart-more"
        open={open}
        onToggle={(event) => onOpen((event.currentTarget as HTMLDetailsElement).open)}
      >
        <summary>
          {entry ? 'Type a result' : 'How it was measured'}
          <span className="hidden"> of line {line.number}</span>
        </summary>
        {open ? (
          <div className="chart-inside">
            {line.curve ? <p>This is the {line.curve}.</p> : null}
            <p>{line.how}</p>
            <p className="quiet">Limit {line.source_text}.</p>
            {[
              ['As found with', line.first_with],
              ['Now with', line.now_with],
            ].map(([words, text]) =>
              text && !entry ? (
                <p className="quiet" key={words}>
                  {words} {text}.
                </p>
              ) : null,
            )}
            {entry ? <TypedResult line={line} units={units} entry={entry} /> : null}
          </div>
        ) : null}
      </details>
    </li>
  );
}
