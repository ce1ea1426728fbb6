import { type Ref, useImperativeHandle, useRef } from 'react';
import type { SurveySheet } from '../../../core/ledger/survey-record.ts';
import { unitWords } from '../../../shop/survey/sheet-fields.ts';
import type { CellPlace, SheetReading } from '../../../shop/survey/sheet-reading.ts';
import { Cells, type CellsHandle } from '../measure/cells.tsx';

export interface ColumnsHandle {
  readonly focus: (at: CellPlace) => void;
}

/** A step's cell has no room for the unit, which stands above. */
const shortPlace = (place: string): string =>
  place.includes(' to ') ? place.replace(/\s(mm|in)$/, '') : place;

/** The cells of a sheet, column by column: Enter in the last of one goes on in the next. */
export function Columns(props: {
  readonly sheet: SurveySheet;
  readonly reading: SheetReading;
  readonly handle: Ref<ColumnsHandle>;
  /** Words with the machine's own names for its ends. */
  readonly placed: (words: string) => string;
  readonly onType: (at: CellPlace, text: string) => void;
  readonly onPaste: (at: CellPlace, text: string) => void;
  readonly onFocus: (at: CellPlace) => void;
  readonly onEnd: () => void;
}) {
  const { sheet, reading, handle, placed, onType, onPaste, onFocus, onEnd } = props;
  const { columns } = reading.layout;
  const lists = useRef(new Map<string, CellsHandle>());
  useImperativeHandle(handle, () => ({ focus: (at) => lists.current.get(at.column)?.focus(at.index) }));
  return columns.map(({ key, label, places }, k) => (
    <section className="survey-column" key={key}>
      {columns.length > 1 ? <h3>{placed(label)}</h3> : null}
      <Cells
        label={`${placed(label)}, ${unitWords(sheet.unit)}`}
        handle={(own) => {
          if (own) lists.current.set(key, own);
          else lists.current.delete(key);
        }}
        cells={places.map((place, index) => {
          const read = reading.cells[key]![index]!;
          return {
            place: shortPlace(place),
            typed: sheet.cells[key]?.[index] ?? '',
            wrong: read.is === 'wrong' ? read.why : undefined,
          };
        })}
        onType={(index, text) => onType({ column: key, index }, text)}
        onColumn={(index, text) => onPaste({ column: key, index }, text)}
        onFocus={(index) => onFocus({ column: key, index })}
        onEnd={() => {
          const next = columns[k + 1];
          if (next) lists.current.get(next.key)?.focus(0);
          else onEnd();
        }}
      />
    </section>
  ));
}
