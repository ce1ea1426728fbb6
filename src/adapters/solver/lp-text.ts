import type { LinearProgram } from '../../core/plan/program.ts';

/** Lines of the LP format may not grow without end; terms are broken over several. */
const termsPerLine = 8;

const number = (value: number): string => {
  if (value === Infinity) return '+inf';
  if (value === -Infinity) return '-inf';
  return String(value);
};

function sum(terms: readonly (readonly [string, number])[]): string {
  const kept = terms.filter(([, coefficient]) => coefficient !== 0);
  const words = kept.map(
    ([name, coefficient]) => `${coefficient < 0 ? '-' : '+'} ${number(Math.abs(coefficient))} ${name}`,
  );
  const lines: string[] = [];
  for (let i = 0; i < words.length; i += termsPerLine) lines.push(words.slice(i, i + termsPerLine).join(' '));
  return lines.join('\n  ');
}

/**
 * A program as text in the LP format. Names are replaced by x0, x1, … and r0, r1, …, so that none can be misread
 * (the format takes `e1` for a number); the answer is matched by place.
 */
export function lpText(program: LinearProgram): string {
  const place = new Map(program.columns.map((column, i) => [column.name, `x${i}`]));
  const named = (terms: readonly (readonly [string, number])[]) =>
    terms.map(([name, coefficient]): [string, number] => {
      const x = place.get(name);
      if (x === undefined)
        throw new RangeError(`row names column "${name}", which the program does not have`);
      return [x, coefficient];
    });
  const text = [
    'Minimize',
    ` cost: ${sum(named(program.columns.map((c) => [c.name, c.cost]))) || '0 x0'}`,
    'Subject To',
  ];
  program.rows.forEach((row, i) => {
    const left = sum(named(row.terms));
    if (left === '') return;
    if (row.low === row.high) text.push(` r${i}: ${left} = ${number(row.low)}`);
    else {
      if (row.low !== -Infinity) text.push(` r${i}l: ${left} >= ${number(row.low)}`);
      if (row.high !== Infinity) text.push(` r${i}h: ${left} <= ${number(row.high)}`);
    }
  });
  text.push('Bounds');
  program.columns.forEach((column, i) => {
    text.push(
      column.low === -Infinity && column.high === Infinity
        ? ` x${i} free`
        : ` ${number(column.low)} <= x${i} <= ${number(column.high)}`,
    );
  });
  const whole = program.columns.flatMap((column, i) => (column.whole ? [`x${i}`] : []));
  if (whole.length) text.push('General', ` ${whole.join('\n ')}`);
  text.push('End', '');
  return text.join('\n');
}
