import type { ChartRecord } from '../../core/ledger/rebuild-record.ts';
import { sayLength } from '../../core/quantity/length.ts';
import { sayDeviation } from '../../core/quantity/say.ts';
import { clean, type UnitSystem } from '../../core/quantity/unit.ts';
import { idFrom } from '../order/machine-draft.ts';
import type { LineShown } from './line-shown.ts';

type OwnTest = NonNullable<ChartRecord['own_tests']>[number];
type OwnLimit = NonNullable<ChartRecord['limits']>[number];

/** A test of one's own to begin with; another id than any that is taken. */
export const blankTest = (group: string, taken: readonly string[]): OwnTest => ({
  id: idFrom('own test', taken),
  group,
  name: 'My own test',
  kind: 'size',
  how: 'Say what rides, what is touched, and what is read.',
  limit: { sense: 'size', um: 20 },
  minutes: 15,
});

/** The same test with another kind or sense: a slope has two directions and a length, and what has a direction says what plus is. */
export function asSense(test: OwnTest, sense: OwnTest['limit']['sense'], kind: OwnTest['kind']): OwnTest {
  const { plus, ...rest } = test;
  const { over_mm, ...limit } = test.limit;
  const fitting = kind === 'slope' && sense === 'size' ? 'either' : sense;
  return {
    ...rest,
    kind,
    ...(fitting === 'size' ? {} : { plus: plus ?? 'say what plus means' }),
    limit: {
      ...limit,
      sense: fitting,
      ...(kind === 'slope' ? { over_mm: over_mm ?? 300 } : over_mm === undefined ? {} : { over_mm }),
    },
  };
}

/** A line's limit as it stands, to be made one's own. */
export function ownLimit(
  line: Pick<LineShown, 'id' | 'low' | 'high' | 'unit_um' | 'over_mm' | 'kind'>,
): OwnLimit {
  const { id, low, high, unit_um, over_mm, kind } = line;
  const um = (value: number): number => clean(value * unit_um);
  const sense = low === undefined ? 'size' : low >= 0 ? 'plus' : (high ?? 0) <= 0 ? 'minus' : 'either';
  const most = Math.max(Math.abs(low ?? 0), Math.abs(high ?? 0));
  return {
    test: id,
    sense,
    um: um(most),
    ...(kind === 'slope' && over_mm !== undefined ? { over_mm } : {}),
  };
}

/** A limit of one's own in the units of the screen: "20 µm in 300 mm"; what is no number yet as it is typed. */
export function limitWords(limit: Pick<OwnLimit, 'um' | 'over_mm'>, system: UnitSystem): string {
  const { um, over_mm } = limit;
  if (typeof um !== 'number') return String(um ?? '');
  const size = sayDeviation(um, system, { signed: false }).text;
  return typeof over_mm === 'number' ? `${size} in ${sayLength(over_mm, system).text}` : size;
}

/** A chart as text that tells one from another, whatever order its keys came in: the shop's file hands them back in its own. */
export const chartKey = (record: ChartRecord): string =>
  JSON.stringify(record, (_, value: unknown) =>
    value !== null && typeof value === 'object' && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value,
  );

/** Lines of text as a list, empty ones left out. */
export const linesOf = (text: string): string[] => text.split('\n').filter((line) => line.trim() !== '');
