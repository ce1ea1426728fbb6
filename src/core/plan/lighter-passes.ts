import type { LinearProgram } from './program.ts';

/** So many steps for each zone, −1 or +1 a step. */
type Change = readonly (readonly [zone: number, step: 1 | -1])[];

/** Looks at rows that the search may take: a tenth of a second or two, the same on every machine. */
const mostLooks = 3e7;
/** Rows hold to this, µm or µrad. */
const slack = 1e-9;

/**
 * Fewer passes than a solver out of time left behind: a pass less on every zone at once, on one, two or two with one more
 * or less elsewhere, as long as every row holds and the cost falls. What comes out is never dearer than what went in.
 *
 * @param program  whole columns only
 * @param passes   one a column, within every row
 */
export function lighterPasses(program: LinearProgram, passes: readonly number[]): number[] {
  const { columns, rows } = program;
  const count = columns.length;
  const m = [...passes];
  const place = new Map(columns.map((column, z) => [column.name, z]));
  const effect = columns.map(() => new Float64Array(rows.length));
  rows.forEach((row, r) => {
    for (const [name, coefficient] of row.terms) effect[place.get(name)!]![r]! += coefficient;
  });
  const value = Float64Array.from(rows, (_, r) => m.reduce((sum, k, z) => sum + k * effect[z]![r]!, 0));
  let looks = 0;

  const holds = (change: Change): boolean => {
    for (const [z, step] of change) {
      const k = m[z]! + step;
      if (k < columns[z]!.low || k > columns[z]!.high) return false;
    }
    for (let r = 0; r < rows.length; r++) {
      looks++;
      let sum = value[r]!;
      for (const [z, step] of change) sum += step * effect[z]![r]!;
      if (sum < rows[r]!.low - slack || sum > rows[r]!.high + slack) return false;
    }
    return true;
  };
  const taken = (change: Change): boolean => {
    if (change.length === 0 || looks > mostLooks) return false;
    if (change.reduce((sum, [z, step]) => sum + step * columns[z]!.cost, 0) > -slack) return false;
    if (!holds(change)) return false;
    for (const [z, step] of change) {
      m[z]! += step;
      for (let r = 0; r < rows.length; r++) value[r]! += step * effect[z]![r]!;
    }
    return true;
  };
  const any = (from: number, helps: (z: number) => boolean): boolean => {
    for (let z = from; z < count; z++) if (looks <= mostLooks && helps(z)) return true;
    return false;
  };

  const everywhere = () => taken(m.flatMap((k, z): [number, -1][] => (k > 0 ? [[z, -1]] : [])));
  const withOne = (less: Change): boolean =>
    any(0, (z) => {
      if (less.some(([other]) => other === z)) return false;
      return taken([...less, [z, -1]]) || taken([...less, [z, 1]]);
    });
  const one = () => any(0, (a) => taken([[a, -1]]));
  const two = () => any(0, (a) => withOne([[a, -1]]));
  const three = () => {
    const pair = (a: number, b: number): Change => [
      [a, -1],
      [b, -1],
    ];
    return any(0, (a) => any(a + 1, (b) => withOne(pair(a, b))));
  };
  while (everywhere() || one() || two() || three());
  return m;
}
