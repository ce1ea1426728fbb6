import { type ReactNode, useId, useState } from 'react';
import type { Machine } from '../../../core/order/machine.ts';
import {
  type HeldNames,
  type NamedList,
  renamed,
  renameRefusal,
} from '../../../shop/order/machine-rename.ts';
import { type MeasureScale, measureShown, measureTyped } from '../../../shop/order/measure-typed.ts';
import { Wrong } from '../frame/notice.tsx';

/** A line of text with its label. */
export function TextField(props: {
  readonly label: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly long?: boolean;
  readonly placeholder?: string;
}) {
  const { label, value, onChange, long, placeholder } = props;
  const id = useId();
  const given = {
    id,
    value,
    placeholder,
    autoComplete: 'off',
    onChange: (event: { target: { value: string } }) => onChange(event.target.value),
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {long ? <textarea rows={2} {...given} /> : <input {...given} />}
    </div>
  );
}

/** One of several, by name. */
export function PickField(props: {
  readonly label: string;
  readonly value: string;
  readonly among: readonly { readonly value: string; readonly words: string }[];
  readonly onChange: (value: string) => void;
}) {
  const { label, value, among, onChange } = props;
  const id = useId();
  const known = among.some((one) => one.value === value);
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChange(event.target.value)}>
        {known ? null : <option value={value}>{value === '' ? 'choose' : `${value} (not there)`}</option>}
        {among.map((one) => (
          <option key={one.value} value={one.value}>
            {one.words}
          </option>
        ))}
      </select>
    </div>
  );
}

/** What is typed as a number; what is none yet ("12.", "-") stays as it is, so that the check can name it. */
function numberTyped(text: string): number | string | undefined {
  const bare = text.trim();
  const number = Number(bare.replace(',', '.').replace('−', '-'));
  const whole = bare !== '' && Number.isFinite(number) && !/[.,]$/.test(bare);
  return bare === '' ? undefined : whole ? number : text;
}

/** A number as it is typed. What is no number goes on as it is, so that the check can name it. */
export function NumberField(props: {
  readonly label: string;
  readonly value: number | string | undefined;
  readonly onChange: (value: number | string | undefined) => void;
  /** A sum over the machine's sizes may stand here too. */
  readonly sum?: boolean;
}) {
  const { label, value, onChange, sum } = props;
  const id = useId();
  const [typed, type] = useState('');
  // "0.0" is 0 already, and must stand while 0.05 is being typed.
  const shown = numberTyped(typed) === value ? typed : value === undefined ? '' : String(value);
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        value={shown}
        inputMode={sum ? 'text' : 'decimal'}
        autoComplete="off"
        autoCapitalize="none"
        onChange={({ target }) => {
          type(target.value);
          onChange(numberTyped(target.value));
        }}
      />
    </div>
  );
}

/** A number with a unit, typed and shown as the shop writes it and kept in mm or µm; a sum over the machine's sizes may stand there too. */
export function ScaledField(props: {
  readonly label: string;
  readonly scale: MeasureScale;
  readonly value: number | string | undefined;
  readonly onChange: (value: number | string | undefined) => void;
  /** The scale's sign does not stand behind the label: it is said above. */
  readonly bare?: boolean;
}) {
  const { label, scale, value, onChange, bare } = props;
  const id = useId();
  const [typed, type] = useState('');
  const shown = measureTyped(typed, scale) === value ? typed : measureShown(value, scale);
  return (
    <div className="field">
      <label htmlFor={id}>{bare ? label : `${label}, ${scale.sign}`}</label>
      <input
        id={id}
        value={shown}
        autoComplete="off"
        autoCapitalize="none"
        onChange={({ target }) => {
          type(target.value);
          onChange(measureTyped(target.value, scale));
        }}
      />
    </div>
  );
}

/** A short name, by which other things of the machine refer to this one: all of them follow, or it says why it cannot be. */
export function ShortName(props: {
  readonly label?: string;
  readonly machine: Machine;
  readonly list: NamedList;
  readonly name: string;
  readonly held: HeldNames;
  readonly onChange: (machine: Machine) => void;
}) {
  const { label = 'Short name', machine, list, name, held, onChange } = props;
  const id = useId();
  const [typed, type] = useState<string>();
  const why = typed === undefined ? undefined : renameRefusal(machine, list, name, typed, held);
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        value={typed ?? name}
        autoComplete="off"
        autoCapitalize="none"
        spellCheck={false}
        aria-invalid={why === undefined ? undefined : true}
        aria-describedby={`${id}-said`}
        onChange={({ target }) => {
          const next = target.value.trim();
          type(next);
          if (renameRefusal(machine, list, name, next, held) === undefined)
            onChange(renamed(machine, list, name, next));
        }}
        onBlur={() => type(undefined)}
      />
      <div id={`${id}-said`} aria-live="polite">
        {why === undefined ? null : <Wrong>{why}</Wrong>}
      </div>
    </div>
  );
}

/** A list of things that are added, moved and taken out; each folds open. */
export function ItemList<T>(props: {
  readonly title: string;
  readonly one: string;
  readonly items: readonly T[];
  readonly name: (item: T) => string;
  readonly note?: (item: T) => string | undefined;
  readonly onChange: (items: readonly T[]) => void;
  /** What is added; left out: nothing can be. */
  readonly blank?: () => T;
  readonly move: (items: readonly T[], from: number, to: number) => readonly T[];
  readonly children: (item: T, set: (item: T) => void) => ReactNode;
}) {
  const { title, one, items, name, note, onChange, blank, move, children } = props;
  return (
    <section className="machine-list">
      <h2>{title}</h2>
      <ol className="rows">
        {items.map((item, k) => (
          <Item
            // biome-ignore lint/suspicious/noArrayIndexKey: a thing that is being renamed has no other name than its place
            key={k}
            name={name(item)}
            note={note?.(item)}
            onEarlier={k > 0 ? () => onChange(move(items, k, k - 1)) : undefined}
            onLater={k < items.length - 1 ? () => onChange(move(items, k, k + 1)) : undefined}
            onOut={() => onChange(items.filter((_, i) => i !== k))}
          >
            {() => children(item, (next) => onChange(items.map((was, i) => (i === k ? next : was))))}
          </Item>
        ))}
      </ol>
      {blank ? (
        <button type="button" className="second" onClick={() => onChange([...items, blank()])}>
          Add {one}
        </button>
      ) : null}
    </section>
  );
}

/** One thing of a list: its name, and behind it its fields. */
function Item(props: {
  readonly name: string;
  readonly note: string | undefined;
  readonly onEarlier: (() => void) | undefined;
  readonly onLater: (() => void) | undefined;
  readonly onOut: () => void;
  readonly children: () => ReactNode;
}) {
  const { name, note, onEarlier, onLater, onOut, children } = props;
  const [open, setOpen] = useState(false);
  const act = (words: string, deed: (() => void) | undefined) =>
    deed ? (
      <button type="button" className="third" onClick={deed}>
        {words}
        <span className="hidden"> {name}</span>
      </button>
    ) : null;
  return (
    <li>
      <details
        className="machine-item"
        open={open}
        onToggle={(event) => {
          // A list inside this one tells of its own opening too.
          if (event.target === event.currentTarget) setOpen(event.currentTarget.open);
        }}
      >
        <summary>
          <span>
            {name}
            {note === undefined ? null : <small>{note}</small>}
          </span>
        </summary>
        {open ? (
          <div className="machine-inside">
            {children()}
            <div className="machine-moves">
              {act('Earlier', onEarlier)}
              {act('Later', onLater)}
              {act('Take out', onOut)}
            </div>
          </div>
        ) : null}
      </details>
    </li>
  );
}
