import type { Verdict } from '../core/prove/verdict.ts';
import { drawing, group } from './drawing.ts';
import type { Measured } from './gauge-scale.ts';
import { line as rule } from './line.ts';
import { verdictMark } from './mark.ts';
import { palette } from './palette.ts';
import { rowGauge } from './row-gauge.ts';
import { type Shape, shape } from './shape.ts';
import { brokenLines, label, textWidth } from './text.ts';

/** A value of a chart's line as it is drawn: the doubt is absent when nobody knows it. */
interface ChartValue {
  readonly value: number;
  readonly doubt?: number;
  readonly text: string;
}

/** One line of a chart, every text ready. */
export interface ChartRow {
  readonly number: number;
  readonly name: string;
  readonly plus_text?: string;
  readonly limit_text: string;
  readonly unit_text: string;
  readonly low?: number;
  readonly high?: number;
  readonly first?: ChartValue;
  readonly now?: ChartValue;
  readonly is_final: boolean;
  readonly verdict: Verdict | 'not measured';
  readonly side?: 'low' | 'high';
  readonly note?: string;
  readonly worked_to_text?: string;
}

/** The width charts are drawn at, px: the whole of a sheet of paper between its margins. */
export const chartWidth = 900;

/** Where the columns stand, px: left edge, or right edge for figures. */
const at = { number: 22, name: 34, limit: 336, unit: 346, found: 522, now: 620, gauge: 634, verdict: 772 };
const gaugeWidth = 124;
const noteWidth = at.found - at.name;
const size = 14;
const step = 18;

const quiet = { size, weight: 450, fill: palette.ink2 };
const right = { anchor: 'end' } as const;

/** The heads of the columns. */
export function chartHead(): Shape {
  const height = 30;
  const head = (x: number, words: string, end = false): Shape =>
    label(x, 19, words, { size, weight: 560, fill: palette.ink2, ...(end ? right : {}) });
  return drawing(
    { title: 'Columns of the chart', width: chartWidth, height },
    head(at.name, 'Line'),
    head(at.limit, 'Limit', true),
    head(at.unit, 'Unit'),
    head(at.found, 'As found', true),
    head(at.now, 'Now', true),
    head(at.gauge, 'Pin: value ± doubt'),
    head(at.verdict, 'Verdict'),
    rule([0, height - 1], [chartWidth, height - 1], palette.ink, 1.6),
  );
}

/** The name of a group of lines. */
export function chartGroup(name: string): Shape {
  const height = 34;
  return drawing(
    { title: name, width: chartWidth, height },
    label(0, 23, name, { size: 16, weight: 660 }),
    rule([0, height - 1], [chartWidth, height - 1], palette.edge, 1.2),
  );
}

const inks: Record<ChartRow['verdict'], string> = {
  within: palette.blue,
  'not proven': palette.ink,
  outside: palette.lead,
  'not measured': palette.ink2,
};

/** The gauge of a line: its jaws, where it was found, and where it is with its verdict. A value of unknown doubt has no pin. */
export function chartGauge(row: ChartRow, width: number = gaugeWidth): Shape {
  const known = (one: ChartValue | undefined): Measured | undefined =>
    one?.doubt === undefined ? undefined : { value: one.value, doubt: one.doubt };
  const first = known(row.first);
  const now = known(row.now);
  const measured = row.verdict !== 'not measured' && now ? { now: { ...now, verdict: row.verdict } } : {};
  return rowGauge({
    title: `${row.name}: ${row.now?.text ?? 'not measured'}, limit ${row.limit_text} ${row.unit_text}`,
    width,
    band: {
      ...(row.low === undefined ? {} : { low: row.low }),
      ...(row.high === undefined ? {} : { high: row.high }),
    },
    ...measured,
    ...(first && row.is_final ? { as_found: first } : {}),
  });
}

/** A drawing inside another: it keeps its own size, so what makes it fit a page is taken off. */
export function placed(child: Shape, x: number, y: number): Shape {
  const { style: _style, xmlns: _xmlns, 'font-family': _face, ...attributes } = child.attributes;
  return { ...child, attributes: { ...attributes, x, y } };
}

/** One line of the chart: what, limit, as found, now, gauge and verdict, and below it what would settle it. */
export function chartRow(row: ChartRow): Shape {
  // The limit's figures stand at the right of the name: it is broken before it meets them.
  const nameWidth = at.limit - at.name - Math.max(70, textWidth(row.limit_text, size)) - 14;
  const names = brokenLines(row.name, size, nameWidth);
  const plus = row.plus_text ? brokenLines(row.plus_text, size, nameWidth) : [];
  const notes = [
    ...(row.worked_to_text ? [`worked to ${row.worked_to_text}`] : []),
    ...(row.note ? [row.note] : []),
  ].flatMap((one) => brokenLines(one, size, noteWidth));
  const values = [row.first, row.now].map((one) => (one ? valueLines(one).figures.length : 1));
  const least = Math.max(row.unit_text.includes('in') ? 2 : 1, ...values);
  const height = 12 + Math.max(least, names.length + plus.length + notes.length) * step + 6;
  const y = 12 + size - 2;
  const middle = 12 + 7;
  const below = (k: number): number => y + k * step;
  return drawing(
    { title: `${row.number}. ${row.name}`, width: chartWidth, height },
    label(at.number, y, String(row.number), { ...quiet, ...right }),
    ...names.map((words, k) => label(at.name, below(k), words, { size, weight: 560 })),
    ...plus.map((words, k) => label(at.name, below(names.length + k), words, quiet)),
    ...notes.map((words, k) =>
      label(at.name, below(names.length + plus.length + k), words, { ...quiet, weight: 560 }),
    ),
    label(at.limit, y, row.limit_text, { size, weight: 560, ...right }),
    ...unitLines(row.unit_text).map((words, k) => label(at.unit, below(k), words, quiet)),
    ...valueLabels(row.first, at.found, y, 450),
    ...(row.is_final || !row.first
      ? valueLabels(row.now, at.now, y, 680)
      : [label(at.now, y, 'as found', { ...quiet, ...right })]),
    placed(chartGauge(row), at.gauge, middle - 14),
    ...verdictOf(row, y, middle),
    rule([0, height - 0.5], [chartWidth, height - 0.5], palette.line, 1),
  );
}

/** "µm" and below it "in 300 mm". */
function unitLines(unit: string): string[] {
  const [first, ...length] = unit.split(/[ \u00a0]/);
  return [first!, ...(length.length ? [length.join('\u00a0')] : [])];
}

/** Between the figures of two columns, px. */
const columnWidth = at.now - at.found - 8;

/** A value's figures, its doubt on a line of its own where both are wider than their column, and what is said of it. */
function valueLines({ text }: ChartValue): { readonly figures: readonly string[]; readonly said?: string } {
  const [whole, said] = text.split(', ');
  const [value, doubt] = whole!.split('±').map((part) => part.replace(/[\u202f\u00a0 ]+$/, ''));
  // The narrow spaces about ± are reckoned as whole figures; left out, what is reckoned is what is seen, within a few px.
  const seen = textWidth(whole!.replaceAll('\u202f', ''), size);
  const wide = doubt !== undefined && seen > columnWidth;
  return { figures: wide ? [value!, `±${doubt}`] : [whole!], ...(said === undefined ? {} : { said }) };
}

function valueLabels(one: ChartValue | undefined, x: number, y: number, weight: number): Shape[] {
  if (!one) return [label(x, y, 'not taken', { ...quiet, ...right })];
  const { figures, said } = valueLines(one);
  return [
    ...figures.map((words, k) => label(x, y + k * step, words, { size, weight, ...right })),
    ...(said === undefined ? [] : [label(x, y + figures.length * step, said, { ...quiet, ...right })]),
  ];
}

function verdictOf(row: ChartRow, y: number, middle: number): Shape[] {
  const fill = inks[row.verdict];
  const word = label(at.verdict + 24, y, row.verdict, { size, weight: 660, fill });
  if (row.verdict === 'not measured') return [word];
  return [
    group({ color: fill }, placed(verdictMark(row.verdict, row.side ?? 'high', 20), at.verdict, middle - 10)),
    word,
  ];
}

/** Drawings one below the other, as one. */
export function stacked(title: string, parts: readonly Shape[], gap = 0): Shape {
  let y = 0;
  const children = parts.map((part) => {
    const here = placed(part, 0, y);
    y += Number(part.attributes.height) + gap;
    return here;
  });
  return shape(
    'svg',
    { ...drawing({ title, width: chartWidth, height: y }).attributes },
    shape('title', {}, title),
    ...children,
  );
}
