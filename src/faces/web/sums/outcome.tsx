import type { Sum } from '../../../core/sums/sum.ts';
import { Wrong } from '../frame/notice.tsx';
import type { Answered } from './answered.ts';
import type { CellsRead } from './cells.ts';

/** What comes out, or what is still wanted for it; stays in sight while cells are typed. */
export function Outcome(props: {
  readonly sum: Sum;
  readonly read: CellsRead;
  readonly answer: Answered | undefined;
}) {
  const { sum, read, answer } = props;
  const wrong = Object.entries(read.cells).filter(([, one]) => one.state === 'wrong');
  return (
    <section
      className={`sum-outcome${Object.keys(sum.results).length > 2 ? ' many' : ''}${answer?.ok ? '' : ' wanting'}`}
      aria-label="What comes out"
    >
      <div role="status">
        {answer?.ok ? (
          <dl>
            {answer.answer.results.map((one) => (
              <div key={one.key}>
                <dt>
                  <span className="sum-letter">{one.symbol}</span> {one.label}
                </dt>
                <dd>
                  <span className="num">{one.text}</span>
                  {one.plus === undefined ? null : <small>+ {one.plus}</small>}
                </dd>
              </div>
            ))}
          </dl>
        ) : wrong.length > 0 ? (
          <Wrong>
            {wrong.length === 1 ? 'One cell' : `${wrong.length} cells`} cannot be taken:{' '}
            {wrong.map(([key]) => sum.inputs[key]!.symbol).join(', ')}. Nothing typed is lost.
          </Wrong>
        ) : answer ? (
          <Wrong>{answer.why}</Wrong>
        ) : (
          <p>Still to type: {read.missing.map((input) => `${input.symbol}, ${input.label}`).join('; ')}.</p>
        )}
      </div>
    </section>
  );
}
