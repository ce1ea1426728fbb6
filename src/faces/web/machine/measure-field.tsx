import { useId, useState } from 'react';
import { readDeviation } from '../../../core/quantity/deviation.ts';
import { readLength } from '../../../core/quantity/length.ts';
import { plain } from '../../../core/quantity/show.ts';
import { clean, size_um } from '../../../core/quantity/unit.ts';
import { Wrong } from '../frame/notice.tsx';
import { type Units, useSettings } from '../keep/settings.ts';

type Value = number | undefined;

/** What is kept, as it could have been typed: finer than anybody reads; leaving a cell untouched changes nothing. */
function asTyped(value: number, unit: 'um' | 'mm', units: Units, signed: boolean): string {
  const inch = units === 'inch';
  const [size, word] =
    unit === 'um'
      ? ([inch ? size_um.thou : 1, inch ? 'thou' : 'µm'] as const)
      : ([inch ? size_um.in / size_um.mm : 1, inch ? 'in' : 'mm'] as const);
  const number = plain(clean(value / size), 5);
  return `${signed && value > 0 ? '+' : ''}${number}\u00a0${word}`;
}

/** A deviation, µm, or a length, mm, typed as the shop writes it; what cannot be read stays in its cell and says why. */
export function MeasureField(props: {
  readonly label: string;
  readonly unit: 'um' | 'mm';
  readonly value: Value;
  readonly onChange: (value: Value) => void;
  /** What is taken when it is left empty. */
  readonly empty?: string;
  /** It has a direction: its sign is shown. */
  readonly signed?: boolean;
}) {
  const { label, unit, value, onChange, empty, signed = false } = props;
  const { units } = useSettings();
  const id = useId();
  const read = (text: string) => {
    if (text.trim() === '') return { ok: true as const, value: undefined, echo: '' };
    if (unit === 'um') {
      const found = readDeviation(text, units === 'metric' ? 'um' : 'thou');
      return found.ok ? { ok: true as const, value: found.um, echo: found.echo } : found;
    }
    const found = readLength(text, units === 'metric' ? 'mm' : 'in');
    if (found.ok && found.mm < 0)
      return { ok: false as const, why: `I read ${found.echo}; expected 0 or above.` };
    return found.ok ? { ok: true as const, value: found.mm, echo: found.echo } : found;
  };
  const shown = value === undefined ? '' : asTyped(value, unit, units, signed);
  const [typed, setTyped] = useState<string>();
  const text = typed ?? shown;
  const its = read(text);
  const unitWords = unit === 'um' ? (units === 'metric' ? 'µm' : 'thou') : units === 'metric' ? 'mm' : 'in';
  return (
    <div className="field">
      <label htmlFor={id}>
        {label}, <span className="unit">{unitWords}</span>
      </label>
      <input
        id={id}
        value={text}
        autoComplete="off"
        autoCapitalize="none"
        spellCheck={false}
        aria-invalid={its.ok ? undefined : true}
        aria-describedby={`${id}-read`}
        onChange={({ target }) => {
          setTyped(target.value);
          const found = read(target.value);
          if (found.ok) onChange(found.value);
        }}
        onBlur={() => (its.ok ? setTyped(undefined) : undefined)}
      />
      <div id={`${id}-read`}>
        {its.ok ? (
          typed !== undefined && its.echo !== '' ? (
            <p className="quiet">Read as {its.echo}.</p>
          ) : empty === undefined || value !== undefined ? null : (
            <p className="quiet">{empty}</p>
          )
        ) : (
          <Wrong>{its.why}</Wrong>
        )}
      </div>
    </div>
  );
}
