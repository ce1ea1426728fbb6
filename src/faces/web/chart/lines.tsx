import type { Verdict } from '../../../core/prove/verdict.ts';
import type { ChartReport } from '../../../shop/chart/chart-report.ts';
import { VerdictWord } from '../frame/mark.tsx';
import type { Units } from '../keep/settings.ts';
import { ChartLine, type LineEntry } from './line.tsx';

const verdicts: readonly Verdict[] = ['within', 'not proven', 'outside'];

/** How many of each, then the lines group by group. */
export function Lines(props: {
  readonly report: ChartReport;
  readonly units: Units;
  readonly entryOf: (id: string) => LineEntry | undefined;
  readonly opened: string | undefined;
  readonly onOpen: (id: string, isOpen: boolean) => void;
}) {
  const { report, units, entryOf, opened, onOpen } = props;
  return (
    <section aria-label="Lines">
      <ul className="chart-tally" aria-label="How many">
        {verdicts.map((verdict) => (
          <li key={verdict} className={verdict.replace(' ', '-')}>
            <b className="num">{report.tally[verdict]}</b> <VerdictWord verdict={verdict} side="high" />
          </li>
        ))}
        {report.tally['not measured'] ? (
          <li>
            <b className="num">{report.tally['not measured']}</b> not measured
          </li>
        ) : null}
      </ul>
      <div className="chart-columns" aria-hidden="true">
        <span />
        <span>Line</span>
        <span>Limit</span>
        <span className="end">As found</span>
        <span className="end">Now</span>
        <span>Pin: value ± doubt</span>
        <span>Verdict</span>
      </div>
      {report.groups.map((group) => (
        <section key={group.name} className="chart-group">
          <h3>{group.name}</h3>
          <ul>
            {group.lines.map((line) => (
              <ChartLine
                key={line.id}
                line={line}
                units={units}
                entry={entryOf(line.id)}
                open={opened === line.id}
                onOpen={(isOpen) => onOpen(line.id, isOpen)}
              />
            ))}
          </ul>
        </section>
      ))}
      {report.rules.map((rule) => (
        <p key={rule} className="quiet">
          {rule}
        </p>
      ))}
    </section>
  );
}
