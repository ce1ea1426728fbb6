import { type ClipboardEvent, type KeyboardEvent, type Ref, useId, useImperativeHandle, useRef } from 'react';
import { Wrong } from '../frame/notice.tsx';

/** One big cell: where it stands, what was typed into it, and what is wrong with it. */
export interface Cell {
  /** "140 mm"; named once, above the figure. */
  readonly place: string;
  readonly typed: string;
  /** What could be read, what could not, and how to write it. */
  readonly wrong?: string | undefined;
}

export interface CellsHandle {
  readonly focus: (index: number) => void;
}

/**
 * A row of big cells that advance on Enter, so an indicator with a keyboard output just works; a column pasted into one
 * fills the ones after it. What cannot be read stays as typed, and nothing else is touched.
 */
export function Cells(props: {
  readonly label: string;
  readonly cells: readonly Cell[];
  readonly onType: (index: number, text: string) => void;
  /** A column pasted at a cell, as text. */
  readonly onColumn: (index: number, text: string) => void;
  readonly onFocus: (index: number) => void;
  /** Enter in the last cell. */
  readonly onEnd: () => void;
  readonly handle?: Ref<CellsHandle>;
}) {
  const { label, cells, onType, onColumn, onFocus, onEnd, handle } = props;
  const own = useId();
  const inputs = useRef<(HTMLInputElement | null)[]>([]);
  const focus = (index: number) => {
    inputs.current[index]?.focus();
    inputs.current[index]?.select();
  };
  useImperativeHandle(handle, () => ({ focus }));

  const onKeyDown = (index: number) => (event: KeyboardEvent) => {
    const forward = (event.key === 'Enter' && !event.shiftKey) || event.key === 'ArrowDown';
    const back = (event.key === 'Enter' && event.shiftKey) || event.key === 'ArrowUp';
    if (!forward && !back) return;
    event.preventDefault();
    if (forward && index + 1 >= cells.length) onEnd();
    else focus(index + (forward ? 1 : -1));
  };
  const onPaste = (index: number) => (event: ClipboardEvent) => {
    const text = event.clipboardData.getData('text');
    if (!/[\n\r\t;]/.test(text.trim())) return;
    event.preventDefault();
    onColumn(index, text);
  };
  return (
    <fieldset className="cells-of">
      <legend className="hidden">{label}</legend>
      <div className="cells">
        {cells.map((cell, index) => (
          <label className={cell.wrong === undefined ? 'cell' : 'cell bad'} key={cell.place}>
            <span>{cell.place}</span>
            <input
              ref={(input) => {
                inputs.current[index] = input;
              }}
              value={cell.typed}
              onChange={(event) => onType(index, event.target.value)}
              onKeyDown={onKeyDown(index)}
              onPaste={onPaste(index)}
              onFocus={() => onFocus(index)}
              aria-invalid={cell.wrong === undefined ? undefined : true}
              aria-describedby={cell.wrong === undefined ? undefined : `${own}-${index}`}
              autoComplete="off"
              autoCorrect="off"
              spellCheck={false}
              enterKeyHint={index + 1 < cells.length ? 'next' : 'done'}
            />
          </label>
        ))}
      </div>
      {cells.map((cell, index) =>
        cell.wrong === undefined ? null : (
          <Wrong key={cell.place} id={`${own}-${index}`}>
            {cell.place}: {cell.wrong}
          </Wrong>
        ),
      )}
    </fieldset>
  );
}
