/** How a table's numbers came to us; what is from memory must be held against the standard before it is relied on. */
export type Came = 'second hand' | 'from memory';

/** What a grade allows a reference of a given size to be out by. */
export interface GradeLimit {
  /** Whole width of the zone its face, edge or squareness may fill, µm. */
  readonly limit_um: number;
  /** A listed size, or the formula for one that is not listed. */
  readonly how: 'table' | 'formula';
  readonly source: string;
  readonly came: Came;
}

/** A kind of reference that grades are published for. */
export type GradedKind = 'plate' | 'straightedge' | 'square' | 'gauge blocks';

interface Standard {
  readonly kind: GradedKind;
  readonly grades: readonly string[];
  readonly source: string;
  readonly came: Came;
  /** µm, for a length and width in mm. */
  readonly formula: (grade: string, length_mm: number, width_mm: number) => number;
  /** µm of a listed size, if it is one. */
  readonly table?: (grade: string, length_mm: number, width_mm: number) => number | undefined;
}

const inch_um = 0.0254;
/** Plates listed by side in inches: grade AA in µin. A is twice, B four times as much. */
const inchPlates: readonly (readonly [number, number, number])[] = [
  [12, 12, 50],
  [18, 12, 50],
  [24, 18, 75],
  [36, 24, 100],
  [48, 36, 200],
  [72, 48, 350],
  [96, 48, 500],
];
const inchFactor: Readonly<Record<string, number>> = { AA: 1, A: 2, B: 4 };

const dinPlate: Readonly<Record<string, readonly [number, number]>> = {
  '00': [2, 500],
  '0': [4, 250],
  I: [10, 100],
  II: [20, 50],
  III: [40, 25],
};

const isoPlate: Readonly<Record<string, readonly [number, number]>> = {
  '0': [2.5, 0.003],
  '1': [5, 0.006],
  '2': [10, 0.012],
  '3': [20, 0.024],
};
/** Listed sizes of ISO 8512-2 in mm, grades 0 to 3. */
const isoTable: readonly (readonly [number, number, readonly number[]])[] = [
  [160, 100, [3, 6, 12, 25]],
  [250, 160, [3.5, 7, 14, 27]],
  [400, 250, [4, 8, 16, 32]],
  [630, 400, [5, 10, 20, 39]],
  [1000, 630, [6, 12, 24, 49]],
  [1600, 1000, [8, 16, 33, 66]],
  [2000, 1000, [9.5, 19, 38, 75]],
  [2500, 1600, [11.5, 23, 46, 92]],
  [250, 250, [3.5, 7, 15, 30]],
  [400, 400, [4.5, 9, 17, 34]],
  [630, 630, [5, 10, 21, 42]],
  [1000, 1000, [7, 14, 28, 56]],
];

const dinSquare: Readonly<Record<string, readonly [number, number]>> = {
  '00': [2, 100],
  '0': [5, 50],
  '1': [10, 20],
  '2': [20, 10],
};
const dinEdge: Readonly<Record<string, readonly [number, number]>> = {
  '00': [1, 150],
  '0': [2, 100],
  '1': [4, 60],
  '2': [8, 40],
};

const isoBlock: Readonly<Record<string, readonly [number, number]>> = {
  K: [0.2, 250],
  '0': [0.1, 500],
  '1': [0.2, 250],
  '2': [0.4, 125],
};

/** a + L/b, L in mm. */
const straightLine =
  (rows: Readonly<Record<string, readonly [number, number]>>) =>
  (grade: string, length_mm: number): number =>
    rows[grade]![0] + length_mm / rows[grade]![1];

const near = (a: number, b: number): boolean => Math.abs(a - b) < 0.01 * b;

/** Published grades, by the standard's name. Numbers are held to their tables in checks/kit-grades.check.ts. */
export const standards: Readonly<Record<string, Standard>> = {
  'ASME B89.3.7': {
    kind: 'plate',
    grades: ['AA', 'A', 'B'],
    source:
      'GGG-P-463c and ASME B89.3.7 as quoted by plate makers: AA 40 + D²/25 µin, D the diagonal in inches; A twice, B four times',
    came: 'second hand',
    formula: (grade, length, width) =>
      inchFactor[grade]! * (40 + (length ** 2 + width ** 2) / 25.4 ** 2 / 25) * inch_um,
    table: (grade, length, width) => {
      const row = inchPlates.find(([l, w]) => near(length, l * 25.4) && near(width, w * 25.4));
      return row && inchFactor[grade]! * row[2] * inch_um;
    },
  },
  'DIN 876': {
    kind: 'plate',
    grades: ['00', '0', 'I', 'II', 'III'],
    source:
      'DIN 876 as quoted by plate makers: 0 4 + L/250, I 10 + L/100, II 20 + L/50, III 40 + L/25 µm, L the longer side in mm (00 from memory)',
    came: 'second hand',
    formula: (grade, length, width) => straightLine(dinPlate)(grade, Math.max(length, width)),
  },
  'ISO 8512-2': {
    kind: 'plate',
    grades: ['0', '1', '2', '3'],
    source: 'ISO 8512-2, granite: c₁ d + c₂, d the diagonal in mm rounded up to 100',
    came: 'from memory',
    formula: (grade, length, width) => {
      const [fixed, share] = isoPlate[grade]!;
      return fixed + share * 100 * Math.ceil(Math.hypot(length, width) / 100 - 1e-9);
    },
    table: (grade, length, width) =>
      isoTable.find(([l, w]) => near(length, l) && near(width, w))?.[2][Number(grade)],
  },
  'DIN 874': {
    kind: 'straightedge',
    grades: ['00', '0', '1', '2'],
    source: 'DIN 874: 00 1 + L/150, 0 2 + L/100, 1 4 + L/60, 2 8 + L/40 µm, L in mm',
    came: 'from memory',
    formula: straightLine(dinEdge),
  },
  'DIN 875': {
    kind: 'square',
    grades: ['00', '0', '1', '2'],
    source: 'DIN 875: 00 2 + L/100, 0 5 + L/50, 1 10 + L/20, 2 20 + L/10 µm, L in mm',
    came: 'from memory',
    formula: straightLine(dinSquare),
  },
  'ISO 3650': {
    kind: 'gauge blocks',
    grades: ['K', '0', '1', '2'],
    source:
      'ISO 3650, length of one block: K and 1 0.20 + L/250, 0 0.10 + L/500, 2 0.40 + L/125 µm to either side, L in mm',
    came: 'from memory',
    formula: straightLine(isoBlock),
  },
};

/** Standards that grade a kind of reference. */
export const standardsFor = (kind: GradedKind): string[] =>
  Object.entries(standards).flatMap(([name, one]) => (one.kind === kind ? [name] : []));

/**
 * What a published grade allows.
 * @param width_mm  of a plate; no matter for the others
 * @throws RangeError  a standard or grade that is not known, naming those that are
 */
export function gradeLimit(standard: string, grade: string, length_mm: number, width_mm = 0): GradeLimit {
  const one = standards[standard];
  if (!one) throw new RangeError(`standard "${standard}"; expected ${Object.keys(standards).join(', ')}`);
  if (!one.grades.includes(grade))
    throw new RangeError(`grade "${grade}"; expected ${one.grades.join(', ')}`);
  const [longer, shorter] = [Math.max(length_mm, width_mm), Math.min(length_mm, width_mm)];
  const listed = one.table?.(grade, longer, shorter);
  const { source } = one;
  const came = standard === 'DIN 876' && grade === '00' ? 'from memory' : one.came;
  if (listed !== undefined) return { limit_um: listed, how: 'table', source, came };
  return { limit_um: one.formula(grade, longer, shorter), how: 'formula', source, came };
}

/** Spirit levels of JIS B 7510: what one division is by kind, and how far an indication may be out by class. */
export const levelGrades = {
  source:
    'JIS B 7510 as quoted by a level maker: kinds 1, 2, 3 of 0.02, 0.05, 0.1 mm/m; class A within 0.5, class B within 0.7 of a division',
  came: 'second hand',
  division_urad: { '1': 20, '2': 50, '3': 100 },
  within_divisions: { A: 0.5, B: 0.7 },
} as const;
