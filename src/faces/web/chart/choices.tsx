import type { ChartRecord } from '../../../core/ledger/rebuild-record.ts';
import { sayLength } from '../../../core/quantity/length.ts';
import type { ListOffered } from '../../../shop/chart/chart-answer.ts';
import { capital } from '../../../shop/phrase.ts';
import { unitWords } from '../frame/cells.ts';
import { Wrong } from '../frame/notice.tsx';
import type { Units } from '../keep/settings.ts';
import { type ChartDraft, readSize } from './chart-draft.ts';

/** A kept size as it stands in its cell. */
const sizeText = (mm: number | undefined, units: Units): string =>
  mm === undefined ? '' : sayLength(mm, units).text;

/** Which tests the machine is put to, its class and its sizes. */
export function Choices(props: {
  readonly lists: readonly ListOffered[];
  readonly list: ListOffered | undefined;
  readonly draft: ChartDraft;
  readonly units: Units;
  readonly onChange: (draft: ChartDraft) => void;
  /** How the chart is put together so far, as the ledger has it. */
  readonly record: ChartRecord;
  readonly onSet: (record: ChartRecord) => void;
}) {
  const { lists, list, draft, units, onChange, record, onSet } = props;
  /** A size goes into the ledger when its cell is left. */
  const keepSize = (size: ListOffered['dimensions'][number]) => {
    const read = readSize(draft, size);
    if (read.is === 'wrong' || draft.sizes[size.key] === undefined) return;
    const { [size.key]: was, ...others } = record.dimensions ?? {};
    const mm = read.is === 'read' ? read.mm : undefined;
    if (mm !== was)
      onSet({ ...record, dimensions: mm === undefined ? others : { ...others, [size.key]: mm } });
  };
  return (
    <form
      className="chart-choices"
      aria-label="The machine and its tests"
      onSubmit={(event) => event.preventDefault()}
    >
      <div className="field">
        <label htmlFor="chart-list">Tests</label>
        <select
          id="chart-list"
          value={list?.id ?? ''}
          onChange={(event) => {
            const named = event.target.value;
            // Limits, sizes and tests left out are of the list that was chosen before.
            const {
              list: _list,
              class: _class,
              dimensions: _sizes,
              limits: _limits,
              left_out: _out,
              kit: _kit,
              ...others
            } = record;
            onSet(named === '' ? others : { ...others, list: named });
          }}
        >
          <option value="">what this job measured, no list</option>
          {lists.map((one) => (
            <option key={one.id} value={one.id}>
              {capital(one.machine)}
            </option>
          ))}
        </select>
      </div>
      {list && list.classes.length > 1 ? (
        <div className="field">
          <label htmlFor="chart-class">Class of its limits</label>
          <select
            id="chart-class"
            value={list.classes.find((one) => one.id === record.class)?.id ?? list.classes[0]!.id}
            onChange={(event) => onSet({ ...record, class: event.target.value })}
          >
            {list.classes.map((one) => (
              <option key={one.id} value={one.id}>
                {capital(one.name)}
              </option>
            ))}
          </select>
        </div>
      ) : null}
      {list?.dimensions.map((size) => {
        const id = `chart-size-${size.key}`;
        const typed = draft.sizes[size.key];
        const system = typed && typed.text.trim() !== '' ? typed.system : units;
        const read = readSize(draft, size);
        return (
          <div className="field" key={size.key}>
            <label htmlFor={id}>
              {size.label}, <span className="unit">{unitWords('mm', system)}</span>
            </label>
            <input
              id={id}
              value={typed?.text ?? sizeText(record.dimensions?.[size.key], units)}
              onBlur={() => keepSize(size)}
              autoComplete="off"
              autoCapitalize="none"
              spellCheck={false}
              aria-invalid={read.is === 'wrong' ? true : undefined}
              aria-describedby={`${id}-read`}
              onChange={(event) =>
                onChange({
                  ...draft,
                  sizes: { ...draft.sizes, [size.key]: { text: event.target.value, system } },
                })
              }
            />
            <div id={`${id}-read`}>
              {read.is === 'wrong' ? (
                <Wrong>{read.why}</Wrong>
              ) : (
                <p className="quiet">
                  {read.is === 'read'
                    ? `Read as ${read.echo}.`
                    : `taken as ${sayLength(size.value, units).text} when left empty`}
                </p>
              )}
            </div>
          </div>
        );
      })}
      {list ? <p className="quiet chart-about">{list.about}</p> : null}
    </form>
  );
}
