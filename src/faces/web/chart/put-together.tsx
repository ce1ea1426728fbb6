import { useEffect, useState } from 'react';
import type { ChartRecord } from '../../../core/ledger/rebuild-record.ts';
import type { ChartReport } from '../../../shop/chart/chart-report.ts';
import {
  asSense,
  blankTest,
  chartKey,
  limitWords,
  linesOf,
  ownLimit,
} from '../../../shop/chart/own-chart.ts';
import { moved, placeWords } from '../../../shop/order/machine-draft.ts';
import { draftKey, useDraft } from '../keep/draft.ts';
import { jobAddress, posted, Refusing } from '../keep/server.ts';
import type { Units } from '../keep/settings.ts';
import { ItemList, NumberField, PickField, TextField } from '../machine/fields.tsx';
import { MeasureField } from '../machine/measure-field.tsx';
import { MeasuredWith } from './measured-with.tsx';
import '../machine/machine.css';
import { Wrong } from '../frame/notice.tsx';

const senses = [
  { value: 'size', words: 'no more than this, no direction' },
  { value: 'either', words: 'no more than this, both ways' },
  { value: 'plus', words: 'plus only' },
  { value: 'minus', words: 'minus only' },
];

const cells = [
  ['name', 'Machine, as the paper names it'],
  ['number', 'Number'],
  ['workshop', 'Workshop'],
  ['owner', 'Owner'],
  ['room', 'Room, temperature'],
] as const;

type WhyNot = readonly string[] | 'out of reach';
const pause_ms = 350;

/** What the shop says of a chart as it is being put together; nothing when it can be kept. */
function useLooked(id: string, record: ChartRecord, changed: boolean): WhyNot | undefined {
  const [wrong, setWrong] = useState<WhyNot>();
  const text = JSON.stringify(record);
  useEffect(() => {
    if (!changed) return setWrong(undefined);
    let current = true;
    const look = async () => {
      try {
        await posted(`${jobAddress(id)}/chart`, JSON.parse(text));
        if (current) setWrong(undefined);
      } catch (failure) {
        const issues = failure instanceof Refusing ? (failure.refusal.issues ?? []) : [];
        const told = issues.map(
          ({ path, found, expected }) =>
            `${placeWords(JSON.parse(text), path)}: ${found}; expected ${expected}`,
        );
        if (current) setWrong(failure instanceof Refusing ? told : 'out of reach');
      }
    };
    const timer = setTimeout(() => void look(), pause_ms);
    return () => {
      current = false;
      clearTimeout(timer);
    };
  }, [id, text, changed]);
  return wrong;
}

/** Own tests, own limits, tests left out, and what the paper says of the machine: kept in the ledger as a whole. */
export function PutTogether(props: {
  readonly id: string;
  readonly record: ChartRecord;
  readonly report: ChartReport;
  readonly units: Units;
  readonly onSet: (record: ChartRecord) => void;
}) {
  const { id, record, report, units, onSet } = props;
  const was = chartKey(record);
  const [draft, keep, finish] = useDraft<{ readonly of: string; readonly chart: ChartRecord }>(
    draftKey(id, 'chart-own'),
    { of: was, chart: record },
  );
  // What was half written for another list does not go with this one.
  const put = draft.of === was ? draft.chart : record;
  const set = (chart: ChartRecord) => keep({ of: was, chart });
  const changed = chartKey(put) !== was;
  const [open, setOpen] = useState(false);
  const wrong = useLooked(id, put, changed);
  const lines = report.groups.flatMap((group) => group.lines).filter((line) => !line.id.includes(':'));
  const own = put.own_tests ?? [];
  const listed = lines
    .filter((line) => !own.some((test) => test.id === line.id))
    .map((line) => ({ value: line.id, words: line.name }));
  return (
    <details
      className="machine-item chart-own"
      open={open}
      onToggle={(event) => {
        // The lists inside tell of their own opening too.
        if (event.target === event.currentTarget) setOpen(event.currentTarget.open);
      }}
    >
      <summary>
        <span>
          Own tests, own limits, and what the paper says
          <small>
            Tests added, limits changed, tests left out, what each is measured with; machine, condition found,
            what was done
          </small>
        </span>
      </summary>
      {open ? (
        <div className="machine-inside">
          <ItemList
            title="Own tests"
            one="a test"
            items={own}
            name={(test) => test.name}
            note={(test) => test.group}
            onChange={(own_tests) => set({ ...put, own_tests })}
            blank={() =>
              blankTest(
                report.groups[0]?.name ?? 'Own tests',
                [...lines, ...own].map((one) => one.id),
              )
            }
            move={moved}
          >
            {(test, change) => (
              <>
                <TextField label="Test" value={test.name} onChange={(name) => change({ ...test, name })} />
                <TextField
                  label="Stands under"
                  value={test.group}
                  onChange={(group) => change({ ...test, group })}
                />
                <TextField
                  label="How it is measured"
                  long
                  value={test.how}
                  onChange={(how) => change({ ...test, how })}
                />
                <div className="machine-three">
                  <PickField
                    label="What it is"
                    value={test.kind}
                    among={[
                      { value: 'size', words: units === 'metric' ? 'a size, µm' : 'a size, thou' },
                      { value: 'slope', words: 'a fall over a length' },
                    ]}
                    onChange={(kind) => change(asSense(test, test.limit.sense, kind as typeof test.kind))}
                  />
                  <PickField
                    label="Direction"
                    value={test.limit.sense}
                    among={test.kind === 'slope' ? senses.slice(1) : senses}
                    onChange={(sense) => change(asSense(test, sense as typeof test.limit.sense, test.kind))}
                  />
                  <MeasureField
                    label="Limit"
                    unit="um"
                    value={test.limit.um}
                    onChange={(um) => change({ ...test, limit: { ...test.limit, um: um as number } })}
                  />
                  {test.kind === 'slope' ? (
                    <MeasureField
                      label="Over"
                      unit="mm"
                      value={test.limit.over_mm}
                      onChange={(over_mm) =>
                        change({ ...test, limit: { ...test.limit, over_mm: over_mm as number } })
                      }
                    />
                  ) : null}
                  <NumberField
                    label="Takes about, min"
                    value={test.minutes}
                    onChange={(minutes) => change({ ...test, minutes: minutes as number })}
                  />
                </div>
                {test.limit.sense === 'size' ? null : (
                  <TextField
                    label="Plus means"
                    value={test.plus ?? ''}
                    onChange={(plus) => change({ ...test, plus })}
                  />
                )}
              </>
            )}
          </ItemList>
          <ItemList
            title="Own limits in place of the list’s"
            one="a limit"
            items={put.limits ?? []}
            name={(limit) => listed.find((line) => line.value === limit.test)?.words ?? limit.test}
            note={(limit) => limitWords(limit, units)}
            onChange={(limits) => set({ ...put, limits })}
            blank={() => ownLimit(lines[0]!)}
            move={moved}
          >
            {(limit, change) => (
              <>
                <PickField
                  label="Line"
                  value={limit.test}
                  among={listed}
                  onChange={(test) => change(ownLimit(lines.find((line) => line.id === test)!))}
                />
                <div className="machine-three">
                  <PickField
                    label="Direction"
                    value={limit.sense}
                    among={senses}
                    onChange={(sense) => change({ ...limit, sense: sense as typeof limit.sense })}
                  />
                  <MeasureField
                    label="Limit"
                    unit="um"
                    value={limit.um}
                    onChange={(um) => change({ ...limit, um: um as number })}
                  />
                  <MeasureField
                    label="Stated over"
                    unit="mm"
                    value={limit.over_mm}
                    onChange={(over_mm) => {
                      const { over_mm: _over, ...rest } = limit;
                      change(over_mm === undefined ? rest : { ...rest, over_mm: over_mm as number });
                    }}
                  />
                </div>
              </>
            )}
          </ItemList>
          <ItemList
            title="Tests left out"
            one="a test to leave out"
            items={put.left_out ?? []}
            name={(one) => listed.find((line) => line.value === one.test)?.words ?? one.test}
            note={(one) => one.why}
            onChange={(left_out) => set({ ...put, left_out })}
            blank={() => ({ test: listed[0]?.value ?? '', why: 'say why' })}
            move={moved}
          >
            {(one, change) => (
              <>
                <PickField
                  label="Test"
                  value={one.test}
                  among={listed}
                  onChange={(test) => change({ ...one, test })}
                />
                <TextField label="Why" value={one.why} onChange={(why) => change({ ...one, why })} />
              </>
            )}
          </ItemList>
          <MeasuredWith
            kept={put.kit}
            lines={lines}
            onChange={(kit) => {
              const { kit: _was, ...rest } = put;
              set(kit.setups?.length ? { ...rest, kit } : rest);
            }}
          />
          <section className="machine-list">
            <h2>On the paper</h2>
            {cells.map(([key, label]) => (
              <TextField
                key={key}
                label={label}
                value={put.machine?.[key] ?? ''}
                onChange={(text) => {
                  const { [key]: _was, ...rest } = put.machine ?? {};
                  set({ ...put, machine: text === '' ? rest : { ...rest, [key]: text } });
                }}
              />
            ))}
            {(['condition', 'done'] as const).map((key) => (
              <TextField
                key={key}
                long
                label={
                  key === 'condition'
                    ? 'Condition found, one thing a line'
                    : 'What was done, one thing a line'
                }
                value={(put[key] ?? []).join('\n')}
                onChange={(text) =>
                  set({ ...put, [key]: text.endsWith('\n') ? [...linesOf(text), ''] : linesOf(text) })
                }
              />
            ))}
          </section>
          <div aria-live="polite" className="machine-said">
            {wrong === 'out of reach' ? (
              <Wrong>The shop is out of reach. What you wrote stays here.</Wrong>
            ) : (
              (wrong ?? []).map((text) => <Wrong key={text}>{text}</Wrong>)
            )}
          </div>
          {changed && wrong === undefined ? (
            <button
              type="button"
              className="go small"
              onClick={() => {
                onSet(cleared(put));
                finish();
              }}
            >
              Keep these
            </button>
          ) : (
            <p className="quiet">{changed ? 'Not kept yet.' : 'All of it is kept.'}</p>
          )}
        </div>
      ) : null}
    </details>
  );
}

/** Without the empty line that is left while a list of words is being written. */
const cleared = (record: ChartRecord): ChartRecord => ({
  ...record,
  ...(record.condition ? { condition: record.condition.filter((line) => line !== '') } : {}),
  ...(record.done ? { done: record.done.filter((line) => line !== '') } : {}),
});
