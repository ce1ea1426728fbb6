import { Link } from 'wouter';
import { kitOf } from '../../../core/ledger/kit-ledger.ts';
import type { ChartRecord } from '../../../core/ledger/rebuild-record.ts';
import {
  type KitSetup,
  kitWays,
  setupNumbers,
  setupTurns,
  setupWords,
  wayKey,
} from '../../../shop/chart/kit-ways.ts';
import type { LineShown } from '../../../shop/chart/line-shown.ts';
import { moved } from '../../../shop/order/machine-draft.ts';
import { useKit } from '../keep/kit.ts';
import { ItemList, NumberField, PickField } from '../machine/fields.tsx';
import { MeasureField } from '../machine/measure-field.tsx';

const yesNo = [
  { value: 'no', words: 'no' },
  { value: 'yes', words: 'yes' },
];

/** What each test is measured with, chosen from the workshop's kit; the cheapest next measurement goes by it. */
export function MeasuredWith(props: {
  readonly kept: ChartRecord['kit'];
  readonly lines: readonly LineShown[];
  readonly onChange: (kit: NonNullable<ChartRecord['kit']>) => void;
}) {
  const { kept, lines, onChange } = props;
  const { kit: open } = useKit();
  // A workshop without a kit leaves a chart with the one it was put together with.
  const own = open && open.items.length > 0 ? kitOf(open.items) : kept;
  const kit = { instruments: own?.instruments ?? [], references: own?.references ?? [] };
  const setups = (kept?.setups ?? []) as readonly KitSetup[];
  const waysOf = (line: LineShown) => kitWays(kit, line);
  const measurable = lines.filter((line) => waysOf(line).length > 0);
  const free = measurable.filter((line) => !setups.some((one) => one.target === line.id));
  const next = free[0];
  if (measurable.length === 0 && setups.length === 0)
    return (
      <section className="machine-list">
        <h2>What each test is measured with</h2>
        <p className="quiet">
          Nothing in the kit measures a line of this chart. Write down what you have in{' '}
          <Link href="/kit">the kit</Link>, and choose it here.
        </p>
      </section>
    );
  return (
    <ItemList
      title="What each test is measured with"
      one="a test and its things"
      items={setups}
      name={(setup) => lines.find((line) => line.id === setup.target)?.name ?? setup.target}
      note={setupWords}
      onChange={(items) => onChange({ ...kit, setups: items })}
      {...(next ? { blank: () => waysOf(next)[0]!.setup } : {})}
      move={moved}
    >
      {(setup, change) => {
        const line = lines.find((one) => one.id === setup.target);
        const ways = line ? waysOf(line) : [];
        return (
          <>
            <PickField
              label="Test"
              value={setup.target}
              among={[...(line ? [line] : []), ...free].map((one) => ({ value: one.id, words: one.name }))}
              onChange={(target) => change(waysOf(lines.find((one) => one.id === target)!)[0]!.setup)}
            />
            <PickField
              label="Measured with"
              value={wayKey(setup)}
              among={ways.map((way) => ({ value: way.key, words: way.words }))}
              onChange={(key) => change(ways.find((way) => way.key === key)!.setup)}
            />
            <div className="machine-three">
              {setupNumbers(setup).map(({ key, label, unit }) => {
                const value = (setup as unknown as Record<string, number>)[key];
                const set = (number: number | string | undefined) =>
                  change({ ...setup, [key]: number } as KitSetup);
                return unit ? (
                  <MeasureField key={key} label={label} unit={unit} value={value} onChange={set} />
                ) : (
                  <NumberField key={key} label={label} value={value} onChange={set} />
                );
              })}
              {setupTurns(setup).map(({ key, label }) => (
                <PickField
                  key={key}
                  label={label}
                  value={(setup as unknown as Record<string, boolean>)[key] ? 'yes' : 'no'}
                  among={yesNo}
                  onChange={(answer) => change({ ...setup, [key]: answer === 'yes' } as KitSetup)}
                />
              ))}
            </div>
          </>
        );
      }}
    </ItemList>
  );
}
