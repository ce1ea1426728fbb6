import { keptWords } from '../../../shop/chart/kept-words.ts';
import type { LineShown } from '../../../shop/chart/line-shown.ts';
import { Wrong } from '../frame/notice.tsx';
import type { Units } from '../keep/settings.ts';
import { noResult, type ResultTyped, readDoubt, readValue, resultOf, type When } from './chart-draft.ts';
import type { LineEntry } from './line.tsx';

const whens: readonly (readonly [When, string])[] = [
  ['first', 'As found'],
  ['final', 'Now'],
];

/** A line's result typed by hand: as found and now, each with its doubt, and what it was measured with. */
export function TypedResult(props: {
  readonly line: LineShown;
  readonly units: Units;
  readonly entry: LineEntry;
}) {
  const { line, units, entry } = props;
  const isReadable = whens.some(([when]) => resultOf(entry.typed[when], entry.instrument) !== undefined);
  const isWrong = whens.some(([when]) => {
    const typed = entry.typed[when];
    return (
      typed &&
      (readValue(typed, line.plus_text === undefined).is === 'wrong' || readDoubt(typed).is === 'wrong')
    );
  });
  const instrumentId = `chart-${line.id}-with`;
  return (
    <form className="chart-entry" onSubmit={(event) => event.preventDefault()}>
      {whens.map(([when, words]) => {
        const typed = entry.typed[when] ?? noResult(line, units);
        // An empty one takes the unit the screen shows now.
        const fresh = typed.value.trim() === '' && typed.doubt.trim() === '' ? noResult(line, units) : typed;
        const change = (part: Partial<ResultTyped>) => entry.onType(when, { ...fresh, ...part });
        return (
          <div className="two" key={when}>
            <Cell
              id={`chart-${line.id}-${when}`}
              label={words}
              unit={fresh.unit_text}
              text={fresh.value}
              read={readValue(fresh, line.plus_text === undefined)}
              empty={line.plus_text ?? 'a size, without a sign'}
              onChange={(value) => change({ value })}
            />
            <Cell
              id={`chart-${line.id}-${when}-doubt`}
              label={`${words}, its doubt ±`}
              unit={fresh.unit_text}
              text={fresh.doubt}
              read={readDoubt(fresh)}
              empty="holds 19 times in 20; without it nothing is proven"
              onChange={(doubt) => change({ doubt })}
            />
          </div>
        );
      })}
      <div className="field">
        <label htmlFor={instrumentId}>Measured with, if you want it on the paper</label>
        <input
          id={instrumentId}
          value={entry.instrument}
          maxLength={300}
          autoComplete="off"
          onChange={(event) => entry.onInstrument(event.target.value)}
        />
      </div>
      {isReadable && !isWrong ? (
        <button
          type="button"
          className="second"
          onClick={({ currentTarget }) => {
            // The button goes when it is kept; the next Tab leads on to the next line.
            currentTarget.closest('details')?.querySelector('summary')?.focus();
            entry.onKeep();
          }}
        >
          Keep this result
        </button>
      ) : (
        <p className="quiet">Typed results stand in the chart at once; kept ones stand in the ledger.</p>
      )}
      {entry.kept.map((one) => (
        <p key={one.entry} className="chart-kept">
          <span>
            Kept: {keptWords(one, line, units)}
            {one.result.instrument === undefined ? '' : `, ${one.result.instrument}`}
            {one.result.on === undefined ? '' : `, ${one.result.on}`}
          </span>
          <button type="button" className="third" onClick={() => entry.onUndo(one.entry)}>
            Undo<span className="hidden"> {one.when === 'first' ? 'as found' : 'now'}</span>
          </button>
        </p>
      ))}
    </form>
  );
}

function Cell(props: {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly text: string;
  readonly read: ReturnType<typeof readValue>;
  readonly empty: string;
  readonly onChange: (text: string) => void;
}) {
  const { id, label, unit, text, read, empty, onChange } = props;
  return (
    <div className="field">
      <label htmlFor={id}>
        {label}, <span className="unit">{unit}</span>
      </label>
      <input
        id={id}
        value={text}
        autoComplete="off"
        autoCapitalize="none"
        spellCheck={false}
        aria-invalid={read.is === 'wrong' ? true : undefined}
        aria-describedby={`${id}-read`}
        onChange={(event) => onChange(event.target.value)}
      />
      <div id={`${id}-read`}>
        {read.is === 'wrong' ? (
          <Wrong>{read.why}</Wrong>
        ) : (
          <p className="quiet">{read.is === 'read' ? `Read as ${read.echo}.` : empty}</p>
        )}
      </div>
    </div>
  );
}
