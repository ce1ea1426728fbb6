import type { ChartLine } from '../../core/chart/chart-line.ts';
import type { Result } from '../../core/chart/result.ts';
import { roundAt, say } from '../../core/quantity/say.ts';
import { plain, signed } from '../../core/quantity/show.ts';
import { clean, size_um, type UnitSystem } from '../../core/quantity/unit.ts';
import type { BenchTrace } from './job-results.ts';

/** A value and its doubt (two sd) in the unit the line is shown in. */
export interface MeasuredShown {
  readonly value: number;
  /** Absent when nobody knows it. */
  readonly doubt?: number;
  /** "+11.3 ± 2.8", "+11.3, doubt not told"; without unit, which stands once in the line. */
  readonly text: string;
}

/** A chart line in the unit a shop speaks, with every text ready. */
export interface LineShown {
  /** From 1, through the whole chart. */
  readonly number: number;
  readonly id: string;
  readonly group: string;
  readonly name: string;
  readonly curve?: string;
  /** "+ means concave". */
  readonly plus_text?: string;
  readonly how: string;
  /** "0 to +20", "≤ 10". */
  readonly limit_text: string;
  /** "µm in 300 mm", "thou in any 9.84 in". */
  readonly unit_text: string;
  /** How many µm one of the unit is, on the length the line is stated over. */
  readonly unit_um: number;
  readonly kind: ChartLine['kind'];
  /** The whole length it is counted over. */
  readonly over_mm?: number;
  readonly low?: number;
  readonly high?: number;
  readonly first?: MeasuredShown;
  readonly now?: MeasuredShown;
  /** Whether `now` is a final result; else it is the first one again, and nothing was measured after. */
  readonly is_final: boolean;
  readonly verdict: ChartLine['verdict'];
  readonly side?: 'low' | 'high';
  /** What would settle it, or how far it is out. */
  readonly note?: string;
  readonly direction?: ChartLine['direction'];
  /** "from memory: as remembered of …". */
  readonly source_text: string;
  /** "+6 to +20": what the job's own work aimed at. */
  readonly worked_to_text?: string;
  readonly first_with?: string;
  readonly now_with?: string;
  /** The bench that measured it, of a whole machine's chart: its job, and "bench of “…”, job x, rounds 1 and 6". */
  readonly bench?: { readonly job: string; readonly text: string };
}

/** Where a line's results come from, in words. */
function benchShown({ job, step, first_round, last_round }: BenchTrace): { job: string; text: string } {
  const rounds =
    first_round === last_round ? `round ${first_round}` : `rounds ${first_round} and ${last_round}`;
  return { job, text: `${step === undefined ? 'measured' : `bench of “${step}”`}, job ${job}, ${rounds}` };
}

const noBreak = '\u00a0';

/** How many µm one shown unit is, and how the unit is written. Inch shops hear a slope over 12 in for each 300 mm. */
export function lineUnit(
  line: Pick<ChartLine, 'kind' | 'over_mm' | 'any_mm'>,
  system: UnitSystem,
): { readonly um: number; readonly text: string } {
  const { kind, over_mm, any_mm } = line;
  if (system === 'metric') {
    const length = any_mm === undefined ? over_mm : any_mm;
    const text =
      length === undefined ? 'µm' : `µm in ${any_mm === undefined ? '' : 'any '}${plain(length, 5)} mm`;
    return { um: 1, text };
  }
  // Over 12 in where the other shop says 300 mm: the same slope, so a fall over 304.8 mm.
  if (kind === 'slope' && over_mm !== undefined) {
    const inches = (over_mm * 12) / 300;
    return {
      um: clean((size_um.thou * over_mm * size_um.mm) / (inches * size_um.in)),
      text: `thou in ${plain(inches, 4)} in`,
    };
  }
  const length = any_mm ?? over_mm;
  const text =
    length === undefined
      ? 'thou'
      : `thou in ${any_mm === undefined ? '' : 'any '}${plain((length * size_um.mm) / size_um.in, 4)} in`;
  return { um: size_um.thou, text };
}

/** Decimals of a chart: a tenth of a µm, a hundredth of a thou. */
const decimalsOf = (system: UnitSystem): number => (system === 'metric' ? 1 : 2);

function measuredShown(
  one: Result,
  um: number,
  system: UnitSystem,
  isSigned: boolean,
  limits: readonly number[],
): MeasuredShown {
  const value = clean(one.value_um / um);
  const doubt = one.doubt_um === undefined ? undefined : clean(one.doubt_um / um);
  const said = say(value, '', {
    signed: isSigned,
    decimals: decimalsOf(system),
    limits,
    ...(doubt === undefined ? {} : { sd: doubt / 2 }),
  });
  const text = said.text.trimEnd();
  return {
    value,
    ...(doubt === undefined ? {} : { doubt }),
    text: doubt === undefined ? `${text}, doubt not told` : text,
  };
}

/** "0 to +20", "≤ 10", "−6 to +6". */
export function limitText(low: number | undefined, high: number | undefined, isSigned: boolean): string {
  const one = (value: number): string => {
    const shown = roundAt(value, 3);
    return isSigned ? signed(shown) : plain(shown);
  };
  if (low === undefined && high === undefined) return 'none';
  if (low === undefined) return `≤${noBreak}${one(high!)}`;
  if (high === undefined) return `≥${noBreak}${one(low)}`;
  return `${one(low)} to ${one(high)}`;
}

const madeWith = (one: Result | undefined): string | undefined =>
  one && (one.instrument ?? one.reference)
    ? [one.instrument, one.reference && `held against ${one.reference}`].filter(Boolean).join(', ')
    : undefined;

/** A line ready to be shown; `note` is added by whoever knows the kit. */
export function lineShown(
  line: ChartLine,
  number: number,
  system: UnitSystem,
  note: string | undefined,
  trace?: BenchTrace,
): LineShown {
  const { um, text } = lineUnit(line, system);
  const isSigned = line.plus !== undefined;
  const low = line.band.low === undefined ? undefined : clean(line.band.low / um);
  const high = line.band.high === undefined ? undefined : clean(line.band.high / um);
  const limits = [low, high].filter((one) => one !== undefined);
  const shown = (one: Result | undefined): MeasuredShown | undefined =>
    one && measuredShown(one, um, system, isSigned, limits);
  const first = shown(line.first);
  const now = shown(line.now);
  const firstWith = madeWith(line.first);
  const nowWith = madeWith(line.now);
  return {
    number,
    id: line.id,
    group: line.group,
    name: line.name,
    ...(line.curve ? { curve: line.curve } : {}),
    ...(line.plus === undefined ? {} : { plus_text: `+ means ${line.plus}` }),
    how: line.how,
    limit_text: limitText(low, high, isSigned),
    unit_text: text.replaceAll(' ', noBreak),
    unit_um: um,
    kind: line.kind,
    ...(line.over_mm === undefined ? {} : { over_mm: line.over_mm }),
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
    ...(first ? { first } : {}),
    ...(now ? { now } : {}),
    is_final: line.final !== undefined,
    verdict: line.verdict,
    ...(line.judged ? { side: line.judged.side } : {}),
    ...(note === undefined ? {} : { note }),
    ...(line.direction ? { direction: line.direction } : {}),
    source_text: `${line.source.came}: ${line.source.words}`,
    ...(line.worked_to
      ? {
          worked_to_text: limitText(
            line.worked_to.low === undefined ? undefined : clean(line.worked_to.low / um),
            line.worked_to.high === undefined ? undefined : clean(line.worked_to.high / um),
            isSigned,
          ),
        }
      : {}),
    ...(firstWith === undefined ? {} : { first_with: firstWith }),
    ...(nowWith === undefined ? {} : { now_with: nowWith }),
    ...(trace ? { bench: benchShown(trace) } : {}),
  };
}

/** How far a value is beyond its limit, in the line's unit: "2.5 µm beyond". */
export function shortText(line: ChartLine, system: UnitSystem): string {
  const { um } = lineUnit(line, system);
  const places = decimalsOf(system);
  const size = roundAt(clean((line.judged?.short ?? 0) / um), places);
  return `${size.toFixed(places)}${noBreak}${system === 'metric' ? 'µm' : 'thou'}`;
}

/** A doubt of so many µm in the line's unit: "± 3.0 µm". */
export function doubtText(line: ChartLine, doubt_um: number, system: UnitSystem): string {
  const { um } = lineUnit(line, system);
  const places = decimalsOf(system);
  // Down, so that whoever reaches what is said has reached what is needed.
  const size = Math.floor((doubt_um / um) * 10 ** places) / 10 ** places;
  return `±${noBreak}${size.toFixed(places)}${noBreak}${system === 'metric' ? 'µm' : 'thou'}`;
}
