import type { KeyboardEvent } from 'react';
import type { ThingField } from '../../../shop/kit/thing-fields.ts';
import type { FieldRead } from '../../../shop/kit/thing-typed.ts';
import { unitWords } from '../frame/cells.ts';
import { Wrong } from '../frame/notice.tsx';
import type { Units } from '../keep/settings.ts';

/** One field of a thing of the kit: what is asked, what was typed, what was understood. */
export function ThingCell(props: {
  readonly field: ThingField;
  readonly system: Units;
  readonly text: string;
  readonly read: FieldRead;
  /** It was tried to keep the thing: what is missing is said. */
  readonly tried: boolean;
  readonly onChange: (text: string) => void;
  readonly onKeyDown: (event: KeyboardEvent<HTMLInputElement>) => void;
}) {
  const { field, system, text, read, tried, onChange, onKeyDown } = props;
  const id = `thing-${field.key}`;
  const isLacking = tried && field.needed && read.state === 'empty';
  const why =
    read.state === 'wrong' ? read.why : isLacking ? `This one is needed: ${field.hint}.` : undefined;
  return (
    <div className="field">
      <label htmlFor={id}>
        {field.label}
        {field.unit === undefined ? null : (
          <>
            , <span className="unit">{unitWords(field.unit, system)}</span>
          </>
        )}
        {field.needed ? null : <span className="unit"> (if known)</span>}
      </label>
      {field.choices ? (
        <select
          id={id}
          value={text}
          aria-describedby={`${id}-read`}
          onChange={(event) => onChange(event.target.value)}
        >
          {field.choices.map(({ value, words }) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
      ) : (
        <input
          id={id}
          value={text}
          autoComplete="off"
          spellCheck={false}
          enterKeyHint="next"
          placeholder={field.sort === 'date' ? '2031-11-25' : undefined}
          aria-invalid={why === undefined ? undefined : true}
          aria-describedby={`${id}-read`}
          onChange={(event) => onChange(event.target.value)}
          onKeyDown={onKeyDown}
        />
      )}
      <div id={`${id}-read`}>
        {why === undefined ? (
          <p className="quiet">
            {read.state === 'read'
              ? `Read as ${field.sort === 'doubt' ? '± ' : ''}${read.text}; ${field.hint}`
              : field.hint}
          </p>
        ) : (
          <Wrong>{why}</Wrong>
        )}
      </div>
    </div>
  );
}
