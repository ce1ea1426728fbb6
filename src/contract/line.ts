import { z } from 'zod';
import { edgeStart } from '../core/kit/edge-bend.ts';
import { type MaterialName, materials } from '../core/kit/material.ts';
import type { LineInput } from '../core/survey/line-input.ts';
import { type ColumnRule, type OtherUnit, pastedTable } from './pasted-table.ts';
import { BadInput, checked, type Issue } from './refusal.ts';
import { positive } from './slide.ts';

/** More stations than any way has feet for. */
const most = 2000;
const station_mm = z.number().min(-1e5).max(1e5);
/** Past a radian, or a metre, it is a slip of unit. */
const angle_urad = z.number().min(-1e6).max(1e6);
const height_um = z.number().min(-1e6).max(1e6);
const sd = z.number().min(0).max(1e6);

const common = {
  name: z.string().min(1).max(200).optional(),
  direction: z.enum(['vertical', 'horizontal']).optional(),
  unworn_mm: z
    .array(z.tuple([station_mm, station_mm]))
    .min(1)
    .max(20)
    .optional(),
  limit_um: positive.optional(),
  scale_sd: z.number().min(0).max(1).optional(),
};

const anglesSchema = z.strictObject({
  kind: z.literal('angles'),
  step_mm: z.number().min(1e-3).max(1e4),
  angles_urad: z.array(angle_urad).min(2).max(most),
  return_urad: z.array(angle_urad).optional(),
  reading_sd_urad: sd.optional(),
  repeatability_sd_urad: sd.optional(),
  ...common,
});

const heightsSchema = z.strictObject({
  kind: z.literal('heights'),
  stations_mm: z.array(station_mm).min(3).max(most),
  heights_um: z.array(height_um),
  plus: z.enum(['proud', 'hollow']).optional(),
  return_um: z.array(height_um).optional(),
  reversed_um: z.array(height_um).optional(),
  reading_sd_um: sd.optional(),
  repeatability_sd_um: sd.optional(),
  reference_sd_um: sd.optional(),
  straightedge: z
    .strictObject({
      length_mm: z.number().min(10).max(2e4),
      depth_mm: z.number().min(1).max(2e3),
      material: z.enum(Object.keys(materials) as [MaterialName, ...MaterialName[]]),
      modulus_GPa: z.number().min(1).max(1000).optional(),
      support_mm: z.number().min(0).max(1e4).optional(),
      from_mm: station_mm.optional(),
      warmer_K: z.number().min(-50).max(50).optional(),
      warmer_sd_K: z.number().min(0).max(50).optional(),
    })
    .optional(),
  ...common,
});

export const lineSchemas = { angles: anglesSchema, heights: heightsSchema } as const;

/**
 * `line`’s input as it came: steps of angles, or heights; see docs/contract.md.
 * @throws BadInput  naming every field that is wrong
 */
export function lineInput(value: unknown): LineInput {
  const { kind } = checked(z.looseObject({ kind: z.enum(['angles', 'heights']) }), value);
  const input = checked(lineSchemas[kind], value) as LineInput;
  const issues = [...lengthIssues(input), ...unwornIssues(input), ...edgeIssues(input)];
  if (issues.length) throw new BadInput(issues);
  return input;
}

/** A straightedge lies over all stations, on supports within its halves, and bends up and down only. */
function edgeIssues(input: LineInput): Issue[] {
  const edge = input.kind === 'heights' && input.straightedge;
  if (!edge) return [];
  const issues: Issue[] = [];
  if (input.direction === 'horizontal')
    issues.push({
      path: 'straightedge',
      found: 'a straightedge whose sag is to be taken out of a horizontal line',
      expected: 'a vertical line, or no straightedge: its weight does not bend it sideways',
    });
  const start = edgeStart(edge, input.stations_mm);
  const beyond = input.stations_mm.find((at) => at < start - 1e-9 || at > start + edge.length_mm + 1e-9);
  if (beyond !== undefined)
    issues.push({
      path: 'straightedge.length_mm',
      found: `${edge.length_mm}, from ${start} to ${start + edge.length_mm} mm`,
      expected: `a straightedge that reaches station ${beyond} mm`,
    });
  if (edge.support_mm !== undefined && edge.support_mm > edge.length_mm / 2)
    issues.push({
      path: 'straightedge.support_mm',
      found: `${edge.support_mm}`,
      expected: `at most half the length, ${edge.length_mm / 2}`,
    });
  return issues;
}

function lengthIssues(input: LineInput): Issue[] {
  const issues: Issue[] = [];
  const asMany = (path: string, list: readonly number[] | undefined, many: number, each: string) => {
    if (list && list.length !== many)
      issues.push({
        path,
        found: `a list of ${list.length}`,
        expected: `${many}, one for each ${each}`,
      });
  };
  if (input.kind === 'angles') {
    asMany('return_urad', input.return_urad, input.angles_urad.length, 'step of the run there');
    return issues;
  }
  const { stations_mm } = input;
  for (const key of ['heights_um', 'return_um', 'reversed_um'] as const)
    asMany(key, input[key], stations_mm.length, 'station');
  if (input.return_um && input.reversed_um)
    issues.push({
      path: 'reversed_um',
      found: 'a reversed run beside a return run',
      expected: 'one of the two; survey the line twice for both',
    });
  const fallen = stations_mm.findIndex((at, i) => i > 0 && at <= stations_mm[i - 1]!);
  if (fallen > 0)
    issues.push({
      path: `stations_mm[${fallen}]`,
      found: `${stations_mm[fallen]} after ${stations_mm[fallen - 1]}`,
      expected: 'stations in rising order, each once',
    });
  return issues;
}

function unwornIssues(input: LineInput): Issue[] {
  const stations =
    input.kind === 'heights'
      ? input.stations_mm
      : Array.from({ length: input.angles_urad.length + 1 }, (_, i) => i * input.step_mm);
  const stretches = input.unworn_mm ?? [];
  const wrong = stretches.flatMap(([from, to], k): Issue[] =>
    from <= to
      ? []
      : [{ path: `unworn_mm[${k}]`, found: `from ${from} to ${to}`, expected: 'the smaller station first' }],
  );
  const inside = stations.filter((at) => stretches.some(([from, to]) => at >= from && at <= to)).length;
  if (stretches.length && !wrong.length && inside < 2)
    return [{ path: 'unworn_mm', found: `${inside} stations in these stretches`, expected: 'at least 2' }];
  return wrong;
}

const columns: readonly ColumnRule[] = [
  { key: 'kind', called: [], sort: 'word' },
  { key: 'unit', called: ['units'], sort: 'word' },
  { key: 'step_mm', called: ['step', 'base'], sort: 'place' },
  { key: 'stations_mm', called: ['stations', 'station', 'position', 'x'], sort: 'place' },
  { key: 'angles_urad', called: ['angles', 'angle', 'tilt', 'level'], sort: 'angle' },
  { key: 'return_urad', called: ['return angles', 'return angle'], sort: 'angle' },
  { key: 'heights_um', called: ['heights', 'height', 'reading', 'readings'], sort: 'height' },
  { key: 'return_um', called: ['return', 'return heights', 'return height'], sort: 'height' },
  { key: 'reversed_um', called: ['reversed'], sort: 'height' },
];

/** A line read from a table, and where each of its readings stands in it. */
export interface PastedLine {
  readonly input: LineInput;
  /** The text's line of each reading, from 1. */
  readonly lines: readonly number[];
  /** Cells that were read in a unit of their own. */
  readonly otherUnits: readonly OtherUnit[];
}

/**
 * A line from CSV or from pasted columns, with the contract's headings or plain words and a unit: `step_mm, angles_urad`;
 * `station [in], height [thou]`. A run back stands beside the run there, place by place, as it lies on paper.
 *
 * @param more  what the table does not hold: {step_mm, reading_sd, …}; `reading_sd` is µrad for angles, µm for heights
 * @throws BadInput
 */
export function lineFromTable(text: string, more: Readonly<Record<string, unknown>> = {}): PastedLine {
  const table = pastedTable(text, columns);
  const { numbers } = table;
  const kind = table.words.kind ?? (numbers.angles_urad ? 'angles' : 'heights');
  const { reading_sd, ...known } = more;
  const value: Record<string, unknown> = { ...known, kind };
  if (reading_sd !== undefined) value[kind === 'angles' ? 'reading_sd_urad' : 'reading_sd_um'] = reading_sd;
  for (const key of ['angles_urad', 'heights_um', 'reversed_um'] as const)
    if (numbers[key]) value[key] = numbers[key];
  // On paper the run back stands beside the run there; the contract takes it in the order it was made.
  for (const key of ['return_urad', 'return_um'] as const)
    if (numbers[key]) value[key] = numbers[key].toReversed();
  if (kind === 'angles') {
    const step = stepOf(table.numbers, table.lines);
    if (step !== undefined) value.step_mm = step;
  } else if (numbers.stations_mm) value.stations_mm = numbers.stations_mm;
  return { input: lineInput(value), lines: table.lines, otherUnits: table.otherUnits };
}

/** The step between feet: its own column, the same all the way down, or the stations of the rear foot. */
function stepOf(
  numbers: Readonly<Record<string, readonly number[]>>,
  lines: readonly number[],
): number | undefined {
  const { step_mm: steps, stations_mm: stations } = numbers;
  if (steps?.length) {
    const odd = steps.findIndex((step) => step !== steps[0]);
    if (odd < 0) return steps[0];
    throw new BadInput([
      {
        path: `line ${lines[odd]}`,
        found: `a step of ${steps[odd]} mm`,
        expected: `${steps[0]} mm, as above`,
      },
    ]);
  }
  if (!stations || stations.length < 2) return undefined;
  const step = stations[1]! - stations[0]!;
  const odd = stations.findIndex(
    (at, i) => i > 1 && Math.abs(at - stations[i - 1]! - step) > 1e-6 * Math.abs(step),
  );
  if (odd < 0) return step;
  throw new BadInput([
    {
      path: `line ${lines[odd]}`,
      found: `station ${stations[odd]} mm after ${stations[odd - 1]} mm`,
      expected: `${stations[odd - 1]! + step} mm: feet follow each other by ${step} mm; is a station missing?`,
    },
  ]);
}
