import { describe, expect, it } from 'vitest';
import { type GaugeFigure, gauge } from './gauge.ts';
import { gaugeDomain } from './gauge-scale.ts';
import { palette } from './palette.ts';
import { rowGauge } from './row-gauge.ts';
import { nodesOf, type Shape } from './shape.ts';

const figure: GaugeFigure = {
  title: 'Facing',
  width: 358,
  band: { low: 6, high: 20, low_text: '+6', high_text: '+20' },
  rows: [
    { kind: 'past', label: 'R1', value: -43.3, doubt: 5, text: '−43 ± 5' },
    {
      kind: 'now',
      label: 'R2',
      value: -15.3,
      doubt: 4.3,
      text: '−15 ± 4',
      verdict: 'outside',
      to_go: '21 to go',
    },
    { kind: 'forecast', label: 'R3', value: 10.9, doubt: 10, text: 'forecast +11 ± 10' },
  ],
  minus_word: 'convex',
  plus_word: 'concave',
};

const spots = (d: string): number[] => [...d.matchAll(/[MLH](-?[\d.]+)/g)].map((m) => Number(m[1]));
const paths = (root: Shape, fill: string): number[][] =>
  nodesOf(root)
    .filter((node) => node.tag === 'path' && node.attributes.fill === fill)
    .map((node) => spots(String(node.attributes.d)));
const spoken = (root: Shape): string[] =>
  nodesOf(root)
    .filter((node) => node.tag === 'text')
    .map((node) => String(node.children[0]));

it('says in words what it shows: band, ends, and each round with its value, doubt and verdict', () => {
  const said = (root: Shape) => nodesOf(root).find((node) => node.tag === 'desc')?.children[0];
  expect(said(gauge(figure))).toBe(
    'Between +6 and +20. Here minus is convex, plus is concave. R1: −43 ± 5. R2: −15 ± 4, outside, 21 to go. R3: forecast +11 ± 10.',
  );
  expect(said(gauge({ ...figure, band: { high: 5, high_text: '5' }, rows: [] }))).toMatch(/^5 or less\. /);
  expect(said(gauge({ ...figure, desc: 'Its own words.' }))).toBe('Its own words.');
});

/** The gauge's scale, px per unit and where zero is, measured on the jaws as drawn. */
function scaleOf(root: Shape) {
  const [low, high] = paths(root, palette.ink).filter((xs) => Math.max(...xs) - Math.min(...xs) < 8);
  const inner = [Math.max(...low!), Math.min(...high!)];
  const perUnit = (inner[1]! - inner[0]!) / (20 - 6);
  return { perUnit, zero: inner[0]! - 6 * perUnit };
}
/** Extent of the pin of a fill: straight parts give its ends less the round of half its height. */
const pinOf = (root: Shape, fill: string) => {
  const d = String(
    nodesOf(root).find(
      (node) =>
        node.tag === 'path' && node.attributes.fill === fill && String(node.attributes.d).includes('A'),
    )!.attributes.d,
  );
  const [, left, , right, round] = /^M(\S+) (\S+)H(\S+)A(\S+) /.exec(d)!.map(Number);
  return { left: left! - round!, right: right! + round! };
};

describe('a pin between jaws', () => {
  it('is as wide as its doubt on both sides of its value, on the scale of the jaws', () => {
    const root = gauge(figure);
    const { perUnit, zero } = scaleOf(root);
    const now = pinOf(root, palette.lead);
    expect((now.left - zero) / perUnit).toBeCloseTo(-15.3 - 4.3, 1);
    expect((now.right - zero) / perUnit).toBeCloseTo(-15.3 + 4.3, 1);
    const past = pinOf(root, palette.edge);
    expect((past.left - zero) / perUnit).toBeCloseTo(-43.3 - 5, 1);
    expect((past.right - zero) / perUnit).toBeCloseTo(-43.3 + 5, 1);
  });

  it('is solid blue within, solid lead outside, hollow when not proven', () => {
    const [past, now] = figure.rows;
    const look = (verdict: 'within' | 'not proven' | 'outside') =>
      gauge({ ...figure, rows: [past!, { ...now!, verdict }] });
    expect(paths(look('within'), palette.blue)).toHaveLength(1);
    expect(paths(look('within'), palette.lead)).toHaveLength(0);
    expect(paths(look('outside'), palette.lead).length).toBeGreaterThan(0);
    expect(paths(look('not proven'), palette.blue)).toHaveLength(0);
    expect(paths(look('not proven'), palette.lead)).toHaveLength(0);
  });

  it('says how far to go only when told, and names both ends of the axis', () => {
    expect(spoken(gauge(figure))).toEqual(
      expect.arrayContaining(['21 to go', '− convex', 'concave +', '+6', '+20', 'forecast +11 ± 10']),
    );
    const [past, now] = figure.rows;
    const inside = gauge({ ...figure, rows: [past!, { ...now!, verdict: 'within' }] });
    expect(spoken(inside)).not.toContain('21 to go');
  });

  it('is pointed at the edge it runs off, and nothing is drawn off the sheet', () => {
    const root = gauge({ ...figure, domain: [-20, 30], rows: [figure.rows[0]!] });
    const [xs] = paths(root, palette.edge);
    const sheetLeft = Math.min(...xs!);
    expect(sheetLeft).toBeGreaterThan(0);
    // The tip is one point, the back two.
    expect(xs!.filter((x) => Math.abs(x - sheetLeft) < 0.01)).toHaveLength(1);
  });

  it('has a scale that holds band, zero and all values with their doubt', () => {
    const [low, high] = gaugeDomain(figure.band, figure.rows);
    expect(low).toBeLessThan(-48.3);
    expect(high).toBeGreaterThan(20.9);
  });
});

describe('a gauge in a row', () => {
  it('shows empty jaws until something is measured', () => {
    const root = rowGauge({ title: 'Bearing', width: 118, band: { low: 6, high: 20 } });
    expect(paths(root, palette.ink)).toHaveLength(2);
    expect(nodesOf(root).filter((node) => String(node.attributes.d ?? '').includes('A'))).toEqual([]);
  });
  it('has one jaw when the band is open on one side', () => {
    const root = rowGauge({
      title: 'Bearing',
      width: 118,
      band: { low: 70 },
      now: { value: 82, doubt: 4, verdict: 'within' },
    });
    expect(paths(root, palette.ink)).toHaveLength(1);
    expect(paths(root, palette.blue)).toHaveLength(1);
  });
});
