import type { SumInput } from '../../../core/sums/sum.ts';
import { onToNext, unitWords } from '../frame/cells.ts';
import { Wrong } from '../frame/notice.tsx';
import type { Units } from '../keep/settings.ts';
import type { CellRead } from './cells.ts';

/** One input of a sum: its letter, what it is, what was typed and what was understood. */
export function SumCell(props: {
  readonly name: string;
  readonly input: SumInput;
  readonly system: Units;
  readonly text: string;
  readonly read: CellRead;
  /** What is added to what was understood: that a doubt or a value was taken. */
  readonly taken: string | undefined;
  readonly onChange: (text: string) => void;
}) {
  const { name, input, system, text, read, taken, onChange } = props;
  const id = `sum-${name}`;
  return (
    <div className="field sum-cell">
      <label htmlFor={id}>
        <span className="sum-letter">{input.symbol}</span> {input.label},{' '}
        <span className="unit">{unitWords(input.unit, system)}</span>
      </label>
      <input
        id={id}
        value={text}
        autoComplete="off"
        autoCapitalize="none"
        spellCheck={false}
        enterKeyHint="next"
        aria-invalid={read.state === 'wrong' ? true : undefined}
        aria-describedby={`${id}-read`}
        onChange={(event) => onChange(event.target.value)}
        onKeyDown={onToNext}
      />
      <div id={`${id}-read`}>
        {read.state === 'wrong' ? (
          <Wrong>{read.why}</Wrong>
        ) : (
          <p className="quiet">
            {taken ?? (read.text === undefined ? 'to be typed' : `taken as ${read.text} when left empty`)}
          </p>
        )}
      </div>
    </div>
  );
}
