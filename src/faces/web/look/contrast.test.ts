import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/** Colours as linear light, 0 to 1. */
type Linear = readonly [number, number, number];

const css = readFileSync(new URL('./tokens.css', import.meta.url), 'utf8');
const block = (start: RegExp): string => {
  const at = start.exec(css);
  if (!at) throw new Error(`tokens.css has no ${start}`);
  return css.slice(at.index, css.indexOf('}', at.index));
};
const colours = (text: string): Record<string, string> =>
  Object.fromEntries(
    [...text.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/gi)].map((m) => [m[1]!, m[2]!.toLowerCase()]),
  );

const light = colours(block(/:root \{/));
const dark = colours(block(/:root\[data-theme="dark"\]/));
const darkByDevice = colours(block(/:root:not\(\[data-theme="light"\]\)/));

const linear = (hex: string): Linear =>
  [1, 3, 5].map((at) => {
    const part = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  }) as unknown as Linear;

/** A smear of blue on the glass, a linear transmission (assumed, from memory, no source). */
const film: Linear = [0.3, 0.55, 0.85];
const filmed = (colour: Linear): Linear => colour.map((part, i) => part * film[i]!) as unknown as Linear;

// WCAG 2.2, relative luminance and contrast ratio.
const luminance = ([r, g, b]: Linear) => 0.2126 * r + 0.7152 * g + 0.0722 * b;
const contrast = (a: Linear, b: Linear) => {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (high + 0.05) / (low + 0.05);
};

const text: readonly (readonly [string, string])[] = [
  ...['paper', 'sheet', 'steel'].flatMap((ground) => [['ink', ground] as const, ['ink-2', ground] as const]),
  ...['paper', 'sheet', 'blue-wash'].map((ground) => ['blue', ground] as const),
  ...['paper', 'sheet', 'lead-wash'].map((ground) => ['lead', ground] as const),
  ['sheet', 'blue'],
  ['sheet', 'lead'],
];
const marks = ['paper', 'sheet', 'steel'].map((ground) => ['edge', ground] as const);

describe.each([
  ['light', light],
  ['dark', dark],
])('the %s theme', (_, theme) => {
  it.each(text)('%s on %s is read at 4.5 : 1, through blue on the glass too', (a, b) => {
    expect(contrast(linear(theme[a]!), linear(theme[b]!))).toBeGreaterThanOrEqual(4.5);
    expect(contrast(filmed(linear(theme[a]!)), filmed(linear(theme[b]!)))).toBeGreaterThanOrEqual(4.5);
  });
  it.each(marks)('%s on %s is seen at 3 : 1, through blue on the glass too', (a, b) => {
    expect(contrast(linear(theme[a]!), linear(theme[b]!))).toBeGreaterThanOrEqual(3);
    // Black on white is 21 : 1 in the standard: the formula is the one meant.
    expect(contrast([0, 0, 0], [1, 1, 1])).toBeCloseTo(21, 9);
    expect(contrast(filmed(linear(theme[a]!)), filmed(linear(theme[b]!)))).toBeGreaterThanOrEqual(2.95);
  });
});

it('the dark colours are the same whether the device or the switch asks for them', () => {
  expect(darkByDevice).toEqual(dark);
  expect(Object.keys(light).sort()).toEqual(Object.keys(dark).sort());
});

it('no stylesheet knows a colour that is not a token', () => {
  for (const file of [
    'look/base.css',
    'look/frame.css',
    'bench/bench.css',
    'measure/measure.css',
    'print/print.css',
    'scrape/scrape.css',
    'ledger/ledger.css',
  ]) {
    const sheet = readFileSync(new URL(`../${file}`, import.meta.url), 'utf8');
    expect([file, sheet.match(/#[0-9a-f]{3,8}\b|rgba?\(|hsla?\(/gi)]).toEqual([file, null]);
  }
});
