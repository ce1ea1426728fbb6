import type { SumAsk } from '../../../core/sums/answer.ts';
import type { Sum } from '../../../core/sums/sum.ts';
import type { SumAnswer } from '../../../shop/sums/sum-answer.ts';
import { useDraws } from '../draws/ask.ts';
import { Wrong } from '../frame/notice.tsx';
import { UnderWay } from '../frame/under-way.tsx';
import type { Units } from '../keep/settings.ts';

/** How often the doubt is tried by drawing; the same draws each time. */
const sampling = { seed: 1, trials: 100_000 } as const;

/** How a result was come by: its numbers put in, what each input gives to its doubt, and the doubt tried by drawing. */
export function Working(props: {
  readonly sum: Sum;
  readonly ask: SumAsk;
  readonly answer: SumAnswer;
  readonly system: Units;
}) {
  const { sum, ask, answer, system } = props;
  const [drawn, draw, stop] = useDraws<'sum'>(JSON.stringify([ask, system]));
  const draws = drawn.is === 'drawn' ? drawn.answer : undefined;
  const letterOf = (key: string): string => answer.inputs.find((one) => one.key === key)?.symbol ?? key;
  return (
    <details className="optional">
      <summary>Show the working</summary>
      <div>
        {answer.results.map((one, i) => {
          const by = draws?.results[i];
          return (
            <section key={one.key} className="sum-working">
              <h3>{one.label}</h3>
              <p className="sum-formula">{one.working}</p>
              <p className="quiet">
                {one.shares.length === 0
                  ? 'Nothing that was put in has a doubt, so this has none.'
                  : `Its doubt comes from ${one.shares.map((share) => `${letterOf(share.key)} ${share.text}`).join(', ')}.`}
              </p>
              {by?.monte_carlo ? (
                <p className="quiet">
                  By {sampling.trials} draws: {by.monte_carlo.text}.
                </p>
              ) : null}
              {by?.not_drawn === undefined ? null : <p className="quiet">Not drawn: {by.not_drawn}</p>}
            </section>
          );
        })}
        <p className="quiet">± is two standard deviations: 19 times in 20.</p>
        {drawn.is === 'drawing' ? (
          <UnderWay words={`Drawing ${sampling.trials} times.`} onStop={stop} />
        ) : (
          <button
            type="button"
            className="second"
            onClick={() => draw({ what: 'sum', question: { ...ask, monte_carlo: sampling }, system })}
          >
            Try the doubt by drawing
          </button>
        )}
        {drawn.is === 'failed' ? <Wrong role="alert">Not drawn: {drawn.why}</Wrong> : null}
        <p className="quiet">
          The same sum on the command line: <code>{commandOf(sum, ask)}</code>
        </p>
      </div>
    </details>
  );
}

/** The sum as the command line is asked it, in its own units. */
const commandOf = (sum: Sum, ask: SumAsk): string =>
  [
    'waywright sums',
    sum.name,
    ...Object.entries(sum.inputs).flatMap(([key, { unit }]) =>
      ask.taken.includes(key) ? [] : [`${key}_${unit}=${ask.values[key]}`],
    ),
  ].join(' ');
