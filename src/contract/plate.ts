import { z } from 'zod';
import { eightLines, type PlateInput } from '../core/survey/plate-input.ts';
import { type ColumnRule, type OtherUnit, pastedTable } from './pasted-table.ts';
import { BadInput, checked, type Issue } from './refusal.ts';
import { positive } from './slide.ts';

const place_mm = z.number().min(-1e5).max(1e5);
const height_um = z.number().min(-1e6).max(1e6);
const step_mm = z.number().min(1e-3).max(1e4);
const angle_urad = z.number().min(-1e6).max(1e6);
const angles = z.array(angle_urad).min(1).max(200);
const sd = z.number().min(0).max(1e6);

/** The largest grid of angles whose adjustment is still waited for with patience. */
const mostNodes = 441;

const common = {
  name: z.string().min(1).max(200).optional(),
  limit_um: positive.optional(),
  pass_um: z.number().min(1e-3).max(1e4).optional(),
};
const angleSds = { reading_sd_urad: sd.optional(), repeatability_sd_urad: sd.optional() };

export const plateSchemas = {
  points: z.strictObject({
    kind: z.literal('points'),
    points: z
      .array(z.strictObject({ x_mm: place_mm, y_mm: place_mm, z_um: height_um }))
      .min(3)
      .max(100_000),
    reading_sd_um: sd.optional(),
    repeatability_sd_um: sd.optional(),
    ...common,
  }),
  grid: z.strictObject({
    kind: z.literal('grid'),
    step_x_mm: step_mm,
    step_y_mm: step_mm,
    along_x_urad: z.array(angles).min(2).max(200),
    along_y_urad: z.array(angles).min(2).max(200),
    ...angleSds,
    ...common,
  }),
  'eight lines': z.strictObject({
    kind: z.literal('eight lines'),
    step_x_mm: step_mm,
    step_y_mm: step_mm,
    step_diagonal_mm: step_mm,
    lines_urad: z.strictObject(
      Object.fromEntries(eightLines.map((name) => [name, angles.min(2).max(60)])) as Record<
        (typeof eightLines)[number],
        typeof angles
      >,
    ),
    method: z.enum(['diagonals', 'least squares']).optional(),
    ...angleSds,
    ...common,
  }),
} as const;

/**
 * `plate`’s input as it came: points, a grid of angles, or eight lines; see docs/contract.md.
 * @throws BadInput  naming every field that is wrong
 */
export function plateInput(value: unknown): PlateInput {
  const { kind } = checked(z.looseObject({ kind: z.enum(['points', 'grid', 'eight lines']) }), value);
  const input = checked(plateSchemas[kind], value) as PlateInput;
  const issues = issuesOf(input);
  if (issues.length) throw new BadInput(issues);
  return input;
}

function issuesOf(input: PlateInput): Issue[] {
  if (input.kind === 'points') return rowIssues(input.points);
  return input.kind === 'grid' ? gridIssues(input) : eightLineIssues(input);
}

/** Points in one row hold no plane. */
function rowIssues(points: readonly { readonly x_mm: number; readonly y_mm: number }[]): Issue[] {
  const first = points[0]!;
  const far = points.reduce(
    (most, point) => (apart(first, point) > apart(first, most) ? point : most),
    first,
  );
  const long = apart(first, far);
  const wide = points.some(
    (point) =>
      Math.abs(
        (far.x_mm - first.x_mm) * (point.y_mm - first.y_mm) -
          (far.y_mm - first.y_mm) * (point.x_mm - first.x_mm),
      ) >
      1e-6 * long * long,
  );
  if (wide) return [];
  return [
    {
      path: 'points',
      found: `${points.length} points in one row as seen from above`,
      expected: 'points that span a surface; a single row is a line',
    },
  ];
}

interface Place {
  readonly x_mm: number;
  readonly y_mm: number;
}
const apart = (one: Place, other: Place): number => Math.hypot(one.x_mm - other.x_mm, one.y_mm - other.y_mm);

function gridIssues(input: Extract<PlateInput, { kind: 'grid' }>): Issue[] {
  const rows = input.along_x_urad.length;
  const columns = input.along_y_urad.length;
  const wrong = (key: string, lists: readonly (readonly number[])[], many: number, each: string) =>
    lists.flatMap((list, k): Issue[] =>
      list.length === many - 1
        ? []
        : [
            {
              path: `${key}[${k}]`,
              found: `a list of ${list.length}`,
              expected: `${many - 1} steps between the ${many} ${each}`,
            },
          ],
    );
  const issues = [
    ...wrong('along_x_urad', input.along_x_urad, columns, 'columns of along_y_urad'),
    ...wrong('along_y_urad', input.along_y_urad, rows, 'rows of along_x_urad'),
  ];
  if (issues.length === 0 && rows * columns > mostNodes)
    issues.push({
      path: 'along_x_urad',
      found: `${rows} rows of ${columns} stations`,
      expected: `at most ${mostNodes} stations`,
    });
  return issues;
}

/** Diagonal and sides may differ by this share before the steps cannot be those of one surface. */
const diagonalShare = 0.03;

function eightLineIssues(input: Extract<PlateInput, { kind: 'eight lines' }>): Issue[] {
  const { lines_urad, step_x_mm, step_y_mm, step_diagonal_mm } = input;
  const issues: Issue[] = eightLines.flatMap((name) =>
    lines_urad[name].length % 2
      ? [
          {
            path: `lines_urad.${name}`,
            found: `a list of ${lines_urad[name].length}`,
            expected: 'an even number of steps, so that the middle is a station',
          },
        ]
      : [],
  );
  for (const [first, others] of [
    ['front', ['back', 'middle_x']],
    ['left', ['right', 'middle_y']],
    ['rising', ['falling']],
  ] as const)
    for (const name of others)
      if (lines_urad[name].length !== lines_urad[first].length)
        issues.push({
          path: `lines_urad.${name}`,
          found: `a list of ${lines_urad[name].length}`,
          expected: `${lines_urad[first].length}, as many as ${first}`,
        });
  const across = Math.hypot(lines_urad.front.length * step_x_mm, lines_urad.left.length * step_y_mm);
  const diagonal = lines_urad.rising.length * step_diagonal_mm;
  if (issues.length === 0 && Math.abs(diagonal - across) > diagonalShare * across)
    issues.push({
      path: 'step_diagonal_mm',
      found: `diagonals of ${Number(diagonal.toFixed(1))} mm`,
      expected: `about ${Number(across.toFixed(1))} mm, as the sides give`,
    });
  return issues;
}

const columns: readonly ColumnRule[] = [
  { key: 'kind', called: [], sort: 'word' },
  { key: 'unit', called: ['units'], sort: 'word' },
  { key: 'x_mm', called: ['x'], sort: 'place' },
  { key: 'y_mm', called: ['y'], sort: 'place' },
  { key: 'z_um', called: ['z', 'height', 'reading'], sort: 'height' },
  { key: 'step_x_mm', called: ['step x'], sort: 'place' },
  { key: 'step_y_mm', called: ['step y'], sort: 'place' },
  { key: 'step_diagonal_mm', called: ['step diagonal'], sort: 'place' },
  ...eightLines.map((name): ColumnRule => ({ key: `${name}_urad`, called: [name], sort: 'angle' })),
];

/** A surface read from a table, and where each of its readings stands in it. */
export interface PastedPlate {
  readonly input: PlateInput;
  readonly lines: readonly number[];
  readonly otherUnits: readonly OtherUnit[];
}

/**
 * A surface from CSV or pasted columns: points (`x_mm, y_mm, z_um`), or the eight lines side by side (`front_urad` … `falling_urad`) below
 * lines with `step_x_mm`, `step_y_mm` and `step_diagonal_mm`.
 *
 * @param more  what the table does not hold: {pass_um, reading_sd_um, …}
 * @throws BadInput
 */
export function plateFromTable(text: string, more: Readonly<Record<string, unknown>> = {}): PastedPlate {
  const { numbers, lines, otherUnits } = pastedTable(text, columns);
  const isLines = eightLines.some((name) => numbers[`${name}_urad`]);
  const value = isLines ? eightLinesOf(numbers) : pointsOf(numbers, lines);
  return { input: plateInput({ ...value, ...more }), lines, otherUnits };
}

type Numbers = Readonly<Record<string, readonly number[]>>;

function eightLinesOf(numbers: Numbers): Record<string, unknown> {
  return {
    kind: 'eight lines',
    ...Object.fromEntries(
      ['step_x_mm', 'step_y_mm', 'step_diagonal_mm'].flatMap((key) =>
        numbers[key] ? [[key, numbers[key][0]]] : [],
      ),
    ),
    lines_urad: Object.fromEntries(
      eightLines.flatMap((name) => (numbers[`${name}_urad`] ? [[name, numbers[`${name}_urad`]]] : [])),
    ),
  };
}

function pointsOf(numbers: Numbers, lines: readonly number[]): Record<string, unknown> {
  const { x_mm, y_mm, z_um } = numbers;
  const missing = (['x_mm', 'y_mm', 'z_um'] as const).filter((key) => !numbers[key]);
  if (!x_mm || !y_mm || !z_um)
    throw new BadInput(
      missing.map((key) => ({ path: key, found: 'no such column', expected: 'one, with its unit' })),
    );
  const many = Math.max(x_mm.length, y_mm.length, z_um.length);
  const short = (['x_mm', 'y_mm', 'z_um'] as const).filter((key) => numbers[key]!.length < many);
  if (short.length)
    throw new BadInput(
      short.map((key) => ({
        path: `line ${lines[numbers[key]!.length]}`,
        found: `nothing under ${key}`,
        expected: 'a value: one is missing here',
      })),
    );
  return { kind: 'points', points: x_mm.map((x, i) => ({ x_mm: x, y_mm: y_mm[i], z_um: z_um[i] })) };
}
