import { capital } from '../../../shop/phrase.ts';
import type { Worked } from '../../../shop/worked.ts';

/** How the numbers above came about, folded away until it is asked for: what, formula, numbers put in, source. */
export function ShowWorking(props: {
  readonly lines: readonly Worked[];
  /** Of what, where a screen has several. */
  readonly of?: string;
}) {
  const { lines, of } = props;
  if (lines.length === 0) return null;
  return (
    <details className="working optional">
      <summary>Show the working{of === undefined ? null : <span className="hidden"> of {of}</span>}</summary>
      <dl>
        {lines.map(({ what, formula, worked, source }) => (
          <div key={`${what} ${worked}`}>
            <dt>{capital(what)}</dt>
            <dd>
              <code>{formula}</code>
              <br />
              {worked}
              {source === undefined ? null : <small> Source: {source}.</small>}
            </dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
