import { expect, it } from 'vitest';
import { chartRow } from './chart-row.ts';
import type { Shape } from './shape.ts';
import { textWidth } from './text.ts';

/** Texts of a row with where they stand, drawings inside it left out. */
const texts = (row: Shape) =>
  row.children.flatMap((child) =>
    typeof child === 'string' || child.tag !== 'text'
      ? []
      : [{ x: Number(child.attributes.x), y: Number(child.attributes.y), words: String(child.children[0]) }],
  );

const row = (now: string) =>
  chartRow({
    number: 1,
    name: 'Facing',
    limit_text: '+6 to +19.8',
    unit_text: 'µm',
    low: 6,
    high: 19.8,
    first: { value: -32.1, doubt: 4.2, text: '−32.1\u202f±\u202f4.2' },
    now: { value: 9.173, doubt: 3.165, text: now },
    is_final: true,
    verdict: 'within',
  });

const inNow = (now: string) => texts(row(now)).filter((one) => one.x === 620);

it('figures that fit their column stay on one line', () => {
  for (const figures of ['+9.2\u202f±\u202f3.2', '−1.67\u202f±\u202f0.12', '+105.8\u202f±\u202f12.0'])
    expect(inNow(figures).map((one) => one.words)).toEqual([figures]);
});

it('figures wider than their column have the doubt below, clear of the column before, in a row that holds both', () => {
  const now = '+9.173\u202f±\u202f3.165';
  const two = inNow(now);
  expect(two.map((one) => one.words)).toEqual(['+9.173', '±\u202f3.165']);
  expect(two[1]!.y - two[0]!.y).toBe(18);
  for (const one of two) expect(one.x - textWidth(one.words, 14)).toBeGreaterThan(522);
  expect(Number(row(now).attributes.height)).toBeGreaterThan(two[1]!.y);
});
