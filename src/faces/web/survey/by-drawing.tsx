import type { UnitSystem } from '../../../core/quantity/unit.ts';
import { drawnRows, surveyDraws } from '../../../shop/survey/drawn-words.ts';
import { type DrawAsk, useDraws } from '../draws/ask.ts';
import { Wrong } from '../frame/notice.tsx';
import { UnderWay } from '../frame/under-way.tsx';
import type { Answered } from './answered.ts';

/** The doubt tried by drawing, on request: beside the propagated one, on a thread of its own. */
export function ByDrawing({ found, system }: { readonly found: Answered; readonly system: UnitSystem }) {
  const [state, ask, stop] = useDraws<'line' | 'along' | 'plate'>(JSON.stringify(found.input));
  if (!found.answer.sd) return null;
  const { draws } = surveyDraws[found.sort];
  const rows =
    state.is === 'drawn'
      ? drawnRows({ sort: found.sort, answer: state.answer } as Parameters<typeof drawnRows>[0], system)
      : [];
  return (
    <section className="by-drawing" aria-label="The doubt by drawing">
      {state.is === 'drawn' ? (
        <>
          <div className="survey-table narrow-table">
            <table>
              <caption className="hidden">The doubt as propagated, and by drawing</caption>
              <thead>
                <tr>
                  <th scope="col">Width</th>
                  <th scope="col">propagated</th>
                  <th scope="col">drawn</th>
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => (
                  <tr key={row.what}>
                    <th scope="row">{row.what}</th>
                    <td>{row.propagated}</td>
                    <td>
                      {row.drawn}
                      <small>19 in 20: {row.between}</small>
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          <p className="quiet">
            Readings drawn anew {draws} times about what was surveyed. Noise only widens: where several places
            vie for highest or lowest, the mean drawn lies above the width found.
          </p>
        </>
      ) : state.is === 'drawing' ? (
        <UnderWay words={`Drawing ${draws} times.`} onStop={stop} />
      ) : (
        <button
          type="button"
          className="second"
          onClick={() =>
            ask({ what: found.sort, input: found.input } as DrawAsk & { what: typeof found.sort })
          }
        >
          Try the doubt by drawing
        </button>
      )}
      {state.is === 'failed' ? <Wrong role="alert">Not drawn: {state.why}</Wrong> : null}
    </section>
  );
}
