import { type ChartRow, chartGroup, chartHead, chartRow, chartWidth, stacked } from './chart-row.ts';
import { drawing } from './drawing.ts';
import { palette } from './palette.ts';
import type { Shape } from './shape.ts';
import { brokenLines, label } from './text.ts';

/** A whole chart with every text ready. */
export interface ChartSheet {
  readonly title: string;
  readonly note?: string;
  readonly facts: readonly (readonly [string, string])[];
  readonly sentence: string;
  readonly groups: readonly { readonly name: string; readonly lines: readonly ChartRow[] }[];
  readonly rules: readonly string[];
  readonly cautions: readonly string[];
}

/** Words over the whole width, one line below the other. */
export function paragraph(
  words: string,
  lettering: { readonly size?: number; readonly weight?: number; readonly fill?: string } = {},
  width: number = chartWidth,
): Shape {
  const { size = 15, weight = 450, fill = palette.ink } = lettering;
  const lines = brokenLines(words, size, width);
  const step = Math.round(size * 1.35);
  return drawing(
    { title: words, width, height: lines.length * step + 4 },
    ...lines.map((line, k) => label(0, k * step + size, line, { size, weight, fill })),
  );
}

/** Key and value, one below the other. */
export function factLines(facts: readonly (readonly [string, string])[]): Shape {
  const size = 15;
  const step = 21;
  const rows = facts.flatMap(([key, value]) =>
    brokenLines(value, size, chartWidth - 110).map((words, k) => [k === 0 ? key : '', words] as const),
  );
  return drawing(
    {
      title: facts.map(([key, value]) => `${key}: ${value}`).join('; '),
      width: chartWidth,
      height: rows.length * step + 4,
    },
    ...rows.flatMap(([key, words], k) => [
      ...(key ? [label(0, k * step + size, key, { size, weight: 450, fill: palette.ink2 })] : []),
      label(110, k * step + size, words, { size, weight: 560 }),
    ]),
  );
}

/** The chart as rows for whoever breaks them over pages: each group's head with its rows. */
export const chartBlocks = (
  groups: ChartSheet['groups'],
): { readonly head: Shape; readonly rows: readonly Shape[] }[] =>
  groups.map((group) => ({ head: chartGroup(group.name), rows: group.lines.map(chartRow) }));

/** The whole chart as one drawing. */
export function chartSheet(sheet: ChartSheet): Shape {
  return stacked(
    `Acceptance chart of ${sheet.title}`,
    [
      paragraph(`Acceptance chart: ${sheet.title}`, { size: 28, weight: 680 }),
      ...(sheet.note ? [paragraph(sheet.note, { fill: palette.ink2 })] : []),
      paragraph(sheet.sentence, { size: 18 }),
      factLines(sheet.facts),
      chartHead(),
      ...chartBlocks(sheet.groups).flatMap(({ head, rows }) => [head, ...rows]),
      ...[...sheet.rules, ...sheet.cautions].map((words) =>
        paragraph(words, { size: 14, fill: palette.ink2 }),
      ),
    ],
    6,
  );
}
