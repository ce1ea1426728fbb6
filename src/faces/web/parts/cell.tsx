import { onToNext, unitWords } from '../frame/cells.ts';
import { Wrong } from '../frame/notice.tsx';
import type { PartsCell, PartsDraft, PartsRead } from './cells.ts';

/** One cell: what is asked, what was typed, what was understood. */
export function CellField(props: {
  readonly cell: PartsCell;
  readonly draft: PartsDraft;
  readonly read: PartsRead;
  readonly onType: (key: string, text: string) => void;
}) {
  const { cell, draft, read, onType } = props;
  const id = `parts-${cell.key.replaceAll(' ', '-')}`;
  return (
    <div className="field">
      <label htmlFor={id}>
        {cell.label}, <span className="unit">{unitWords(cell.unit, draft.system)}</span>
      </label>
      <input
        id={id}
        value={draft.typed[cell.key] ?? ''}
        autoComplete="off"
        autoCapitalize="none"
        spellCheck={false}
        enterKeyHint="next"
        aria-invalid={read.state === 'wrong' ? true : undefined}
        aria-describedby={`${id}-read`}
        onChange={(event) => onType(cell.key, event.target.value)}
        onKeyDown={onToNext}
      />
      <div id={`${id}-read`}>
        {read.state === 'wrong' ? <Wrong>{read.why}</Wrong> : <p className="quiet">{read.text}</p>}
      </div>
    </div>
  );
}

/** Cells side by side where there is room. */
export const CellFields = (props: {
  readonly cells: readonly PartsCell[];
  readonly draft: PartsDraft;
  readonly reads: Readonly<Record<string, PartsRead>>;
  readonly onType: (key: string, text: string) => void;
}) => (
  <div className="parts-cells">
    {props.cells.map((cell) => (
      <CellField
        key={cell.key}
        cell={cell}
        draft={props.draft}
        read={props.reads[cell.key]!}
        onType={props.onType}
      />
    ))}
  </div>
);
