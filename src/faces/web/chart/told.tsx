import type { ChartReport } from '../../../shop/chart/chart-report.ts';
import { Caution } from '../frame/notice.tsx';

/** Those after it are behind a word: nobody measures more in a day. */
const shownAtOnce = 5;

/** What remains to be proven, the cheapest first: a press on one opens its line. */
export function Remaining({
  report,
  onOpen,
}: {
  readonly report: ChartReport;
  readonly onOpen: (id: string) => void;
}) {
  const lines = report.groups.flatMap((group) => group.lines);
  if (report.remaining.length === 0) return null;
  const go = (number: number) => {
    const line = lines.find((one) => one.number === number);
    if (!line) return;
    onOpen(line.id);
    const summary = document.querySelector<HTMLElement>(`[data-chart-line="${number}"] summary`);
    summary?.scrollIntoView({ block: 'center' });
    summary?.focus();
  };
  const row = (one: ChartReport['remaining'][number]) => (
    <li key={one.number}>
      <button type="button" className="choice" onClick={() => go(one.number)}>
        <span className="chart-number">{one.number}</span>
        <span>
          {one.name}
          {one.text ? <small>{one.text}</small> : null}
        </span>
        <span className="unit">{one.minutes === undefined ? '' : `about ${one.minutes} min`}</span>
      </button>
    </li>
  );
  return (
    <section className="chart-remaining">
      <h2>Still to be proven</h2>
      {report.next ? <p>{report.next}</p> : null}
      <ol className="rows">{report.remaining.slice(0, shownAtOnce).map(row)}</ol>
      {report.remaining.length > shownAtOnce ? (
        <details className="chart-more">
          <summary>{report.remaining.length - shownAtOnce} more</summary>
          <ol className="rows" start={shownAtOnce + 1}>
            {report.remaining.slice(shownAtOnce).map(row)}
          </ol>
        </details>
      ) : null}
    </section>
  );
}

/** What the paper says beside the lines. */
export function Told({ report }: { readonly report: ChartReport }) {
  const accounts = [
    ...(report.job ? [{ of: report.step === undefined ? '' : `${report.step}: `, account: report.job }] : []),
    ...report.benches.map(({ step, account }) => ({ of: `${step}: `, account })),
  ];
  const cautions = new Set([...report.cautions, ...accounts.flatMap(({ account }) => account.cautions)]);
  const sections: readonly (readonly [string, readonly string[]])[] = [
    [
      'What was done',
      [
        ...report.done,
        ...accounts.flatMap(({ of, account }) => [
          ...account.rounds.map(
            (round) =>
              `${of}Round ${round.round}${round.on === undefined ? '' : `, ${round.on}`}. Found: ${round.found.join('; ')}.${round.scraped === undefined ? '' : ` Then scraped: ${round.scraped}.`}`,
          ),
          ...account.removal.map((one) => `${of}A pass took, as this job learned: ${one}.`),
          `${of}${account.bearing}`,
        ]),
      ],
    ],
    [
      'What it was measured with',
      accounts.flatMap(({ of, account }) => account.setups.map((one) => `${of}${one.name}: ${one.text}`)),
    ],
    [
      'Where the limits come from',
      [
        ...report.sources.map((one) => `Limit ${one}.`),
        ...(report.scaling === undefined ? [] : [report.scaling]),
        ...report.left_out.map((one) => `Left out: ${one}.`),
      ],
    ],
  ];
  return (
    <div className="chart-told">
      {sections.map(([title, texts]) =>
        texts.length ? (
          <section key={title}>
            <h2>{title}</h2>
            {texts.map((text) => (
              <p key={text} className="quiet">
                {text}
              </p>
            ))}
          </section>
        ) : null,
      )}
      <section>
        <h2>Cautions</h2>
        {[...cautions].map((text) => (
          <Caution key={text}>{text}</Caution>
        ))}
      </section>
    </div>
  );
}
