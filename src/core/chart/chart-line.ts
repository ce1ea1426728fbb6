import { type Judged, judge } from '../prove/verdict.ts';
import type { AcceptanceTest, Curve, LimitSource } from './acceptance-test.ts';
import type { LimitBand } from './limit.ts';
import { over, type Result } from './result.ts';
import { type Settle, settle } from './settle.ts';

/** One line of a chart: what was asked, what was found first and last, and whether it is proven. µm throughout. */
export interface ChartLine {
  readonly id: string;
  readonly group: string;
  readonly name: string;
  readonly curve?: Curve;
  readonly kind: AcceptanceTest['kind'];
  readonly plus?: string;
  readonly how: string;
  readonly band: LimitBand;
  /** The whole length it is counted over. */
  readonly over_mm?: number;
  /** A local limit: over any such length. */
  readonly any_mm?: number;
  readonly source: LimitSource;
  readonly direction?: AcceptanceTest['direction'];
  /** As found, spoken over `over_mm`. */
  readonly first?: Result;
  readonly final?: Result;
  /** What the verdict is of: the final result, else the first. */
  readonly now?: Result;
  readonly verdict: 'within' | 'outside' | 'not proven' | 'not measured';
  readonly judged?: Judged;
  /** What would settle it, when it is neither within nor outside. */
  readonly settle?: Settle;
  readonly minutes: number;
  /** What a job's own work aimed at, where it is tighter than or other than the limit. */
  readonly worked_to?: LimitBand;
}

/** What a line is made from. */
export interface Asked extends Omit<ChartLine, 'first' | 'final' | 'now' | 'verdict' | 'judged' | 'settle'> {
  readonly first?: Result;
  readonly final?: Result;
}

/** The guard-banded verdict on a result; without a doubt nothing is proven. */
export function judged(result: Result, band: LimitBand): Judged {
  const { low = -Infinity, high = Infinity } = band;
  const bare = judge(result.value_um, result.doubt_um ?? 0, low, high);
  return result.doubt_um === undefined ? { ...bare, verdict: 'not proven' } : bare;
}

/**
 * A line with its verdict. Results of a slope that were taken over another length are spoken over the line's.
 * @throws RangeError  a slope's result over another length on a line without one
 */
export function chartLine(asked: Asked): ChartLine {
  const { first, final, ...rest } = asked;
  const spoken = (one: Result): Result => {
    if (asked.kind === 'size' || one.over_mm === undefined || one.over_mm === asked.over_mm) return one;
    if (asked.over_mm === undefined)
      throw new RangeError(`${asked.id}: a result over ${one.over_mm} mm; expected a line with a length`);
    return over(one, one.over_mm, asked.over_mm);
  };
  const found = {
    ...(first ? { first: spoken(first) } : {}),
    ...(final ? { final: spoken(final) } : {}),
  };
  const now = found.final ?? found.first;
  if (!now) return { ...rest, ...found, verdict: 'not measured', settle: settle(undefined, asked.band) };
  const its = judged(now, asked.band);
  return {
    ...rest,
    ...found,
    now,
    verdict: its.verdict,
    judged: its,
    ...(its.verdict === 'not proven' ? { settle: settle(now, asked.band) } : {}),
  };
}
