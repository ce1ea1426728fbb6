import type { AcceptanceTest, ClassLimit, LimitSource } from '../chart/acceptance-test.ts';
import type { Result } from '../chart/result.ts';
import type { Kit } from '../kit/kit.ts';
import type { Machine } from '../order/machine.ts';
import type { StepDeed } from '../order/progress.ts';
import type { Entry } from './entry.ts';

/** What happened to a step of the machine, with what whoever did it wrote beside it. */
export interface StepRecord extends StepDeed {
  readonly note?: string;
}

/** A limit in place of a list's, or of an own test; without a source it is the shop's own. */
type OwnLimit = Omit<ClassLimit, 'source'> & { readonly source?: LimitSource };

/** How a job's chart is put together: everything of `chart`'s file but the results. Units as there. */
export interface ChartRecord {
  /** A list of acceptance tests; left out: what the job itself measured, and own tests. */
  readonly list?: string;
  readonly class?: string;
  /** The machine's sizes, mm. */
  readonly dimensions?: Readonly<Record<string, number>>;
  /** What is known of the machine, for whoever keeps the chart. */
  readonly machine?: {
    readonly name?: string;
    readonly number?: string;
    readonly workshop?: string;
    readonly owner?: string;
    readonly room?: string;
  };
  readonly note?: string;
  readonly condition?: readonly string[];
  readonly done?: readonly string[];
  readonly limits?: readonly (OwnLimit & { readonly test: string })[];
  readonly own_tests?: readonly (Omit<AcceptanceTest, 'limits'> & { readonly limit: OwnLimit })[];
  readonly left_out?: readonly { readonly test: string; readonly why: string }[];
  /** Instruments and references, and how lines are measured with them. */
  readonly kit?: Kit & { readonly setups?: readonly unknown[] };
}

/** One result of a line of the chart: as found, or when all is done. */
export interface ResultRecord {
  /** A test's id; of its local limit with ":local" behind it. */
  readonly test: string;
  readonly when: 'first' | 'final';
  readonly result: Result;
}

/** What was found and is planned of a machine's heights, as `heights` takes it; µm by pad, liners in mm. */
export interface HeightsRecord {
  readonly changes?: readonly {
    readonly name: string;
    readonly joint: string;
    readonly when: 'found' | 'planned';
    readonly off_um?: Readonly<Record<string, number>>;
    readonly on_um?: Readonly<Record<string, number>>;
    readonly sd_um?: number;
  }[];
  readonly liners?: readonly {
    readonly joint: string;
    readonly pads: readonly string[];
    readonly brings: string;
    readonly sheet_mm?: number;
    readonly bond_mm?: number;
    readonly bond_sd_mm?: number;
    readonly machining_mm?: number;
    readonly scraping_mm?: number;
    readonly least_mm?: number;
    readonly groove_mm?: number;
    readonly wall_mm?: number;
  }[];
  readonly measured?: Readonly<Record<string, { readonly um: number; readonly sd_um: number }>>;
}

/** A sheet of `axis` or `gib`, as it is asked, by what it is of: "spindle", "tailstock barrel", "centres", a step. */
export interface AxisRecord {
  readonly of: string;
  readonly asked: Readonly<Record<string, unknown>>;
}

/** The bench of a step is a job of its own: which, and of which step. */
export interface BenchLink {
  readonly job: string;
  readonly step: string;
}

/** The whole machine of a job, as it was last set; undefined for a job about one slide only. */
export function machineOf(live: readonly Entry[]): Machine | undefined {
  const set = live.findLast((entry) => entry.kind === 'machine set');
  return set?.kind === 'machine set' ? set.machine : undefined;
}

/** What happened to the machine's steps, in order. */
export const stepRecords = (live: readonly Entry[]): (StepRecord & { at: string; entry: string })[] =>
  live.flatMap((entry) => {
    if (entry.kind !== 'step told') return [];
    const { kind: _kind, id, seq: _seq, ...record } = entry;
    return [{ ...record, entry: id }];
  });

/** The job that a step's bench was opened as last, by step. */
export const benchesOf = (live: readonly Entry[]): ReadonlyMap<string, string> =>
  new Map(live.flatMap((entry) => (entry.kind === 'bench opened' ? [[entry.step, entry.job] as const] : [])));

/** The machine's heights as they were last set. */
export function heightsOf(live: readonly Entry[]): HeightsRecord | undefined {
  const set = live.findLast((entry) => entry.kind === 'heights set');
  return set?.kind === 'heights set' ? set.heights : undefined;
}

/** Axes as they were swept last, by name. */
export const axesOf = (live: readonly Entry[]): ReadonlyMap<string, AxisRecord & { readonly at: string }> =>
  new Map(
    live.flatMap((entry) =>
      entry.kind === 'axis taken'
        ? [[entry.of, { of: entry.of, asked: entry.asked, at: entry.at }] as const]
        : [],
    ),
  );

/** Gibs and dovetails as they were read last, by name: the step they were read in. */
export const gibsOf = (live: readonly Entry[]): ReadonlyMap<string, AxisRecord> =>
  new Map(
    live.flatMap((entry) =>
      entry.kind === 'gib taken' ? [[entry.of, { of: entry.of, asked: entry.asked }] as const] : [],
    ),
  );

/** Of a job that is the bench of a step: the machine's job and the step. */
export function benchOf(live: readonly Entry[]): BenchLink | undefined {
  const link = live.findLast((entry) => entry.kind === 'bench of');
  return link?.kind === 'bench of' ? { job: link.job, step: link.step } : undefined;
}

/** A result with the entry that holds it. */
export type KeptResult = ResultRecord & { readonly entry: string };

/** Results that count: the last of each line, first and final apart. */
export function resultsOf(live: readonly Entry[]): readonly KeptResult[] {
  const found = new Map<string, KeptResult>();
  for (const entry of live)
    if (entry.kind === 'result taken')
      found.set(`${entry.when} ${entry.test}`, {
        test: entry.test,
        when: entry.when,
        result: entry.result,
        entry: entry.id,
      });
  return [...found.values()];
}

/** The chart as it was last put together. */
function chartRecordOf(live: readonly Entry[]): ChartRecord | undefined {
  const set = live.findLast((entry) => entry.kind === 'chart set');
  return set?.kind === 'chart set' ? set.chart : undefined;
}

/** The chart as it stands: as last put together, else the machine's own list; empty when there is neither. */
export function chartRecordNow(live: readonly Entry[]): ChartRecord {
  const machine = machineOf(live);
  return (
    chartRecordOf(live) ?? (machine?.tests ? { list: machine.tests, machine: { name: machine.title } } : {})
  );
}

/** A job's chart as `chart`'s file has it; undefined when nothing of it is in the ledger, nor a machine with a list. */
export function chartFileOf(live: readonly Entry[]): Readonly<Record<string, unknown>> | undefined {
  const kept = resultsOf(live);
  if (!chartRecordOf(live) && !machineOf(live)?.tests && kept.length === 0) return undefined;
  const results = [...new Set(kept.map((one) => one.test))].map((test) => ({
    test,
    ...Object.fromEntries(kept.filter((one) => one.test === test).map((one) => [one.when, one.result])),
  }));
  return { ...chartRecordNow(live), results };
}
