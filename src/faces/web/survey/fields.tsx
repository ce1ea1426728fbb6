import type { SurveySheet } from '../../../core/ledger/survey-record.ts';
import { fieldUnit } from '../../../shop/survey/sheet-fields.ts';
import { fieldWords } from '../../../shop/survey/sheet-hows.ts';
import type { SheetLayout } from '../../../shop/survey/sheet-layout.ts';
import { Wrong } from '../frame/notice.tsx';

export const fieldId = (name: string): string => `field-${name}`;

const placeholders: Readonly<Record<string, string>> = {
  unworn: '0 to 150, 1400 to 1600',
  from: '0',
  edge_from: 'centred',
  edge_warmer: '0.5 ± 0.2',
};

/** The sheet's own numbers: step, length, limit. What cannot be read stays as typed and says why. */
export function Fields(props: {
  readonly sheet: SurveySheet;
  readonly layout: SheetLayout;
  readonly names: readonly string[];
  /** The field that the cells wait for, and why, when it says more than that it is empty. */
  readonly lacks: SheetLayout['lacks'];
  /** Words with the machine's own names for its ends. */
  readonly placed: (words: string) => string;
  readonly onType: (name: string, text: string) => void;
}) {
  const { sheet, layout, names, lacks, placed, onType } = props;
  return names.map((name) => {
    const read = layout.fields[name]!;
    const typed = sheet.fields[name] ?? '';
    const whole = lacks?.field === name && read.is === 'read' ? lacks.why : undefined;
    const wrong = read.is === 'wrong' ? read.why : whole;
    const unit = fieldUnit(sheet, name);
    const { choices } = fieldWords[name]!;
    return (
      <div className={name === 'unworn' ? 'field whole' : 'field'} key={name}>
        <label htmlFor={fieldId(name)}>
          {placed(fieldWords[name]!.label)}
          {unit ? `, ${unit}` : ''}
        </label>
        {choices ? (
          <select id={fieldId(name)} value={typed} onChange={(event) => onType(name, event.target.value)}>
            {choices.map((one) => (
              <option key={one.value} value={one.value}>
                {one.words}
              </option>
            ))}
          </select>
        ) : (
          <input
            id={fieldId(name)}
            value={typed}
            placeholder={placeholders[name]}
            autoComplete="off"
            autoCorrect="off"
            spellCheck={false}
            aria-invalid={wrong === undefined ? undefined : true}
            aria-describedby={wrong === undefined ? undefined : `${fieldId(name)}-wrong`}
            onChange={(event) => onType(name, event.target.value)}
          />
        )}
        {wrong === undefined ? null : <Wrong id={`${fieldId(name)}-wrong`}>{wrong}</Wrong>}
      </div>
    );
  });
}
