import { describe, expect, it } from 'vitest';
import { readTemplates } from '../adapters/file/templates.ts';
import { readWholeMachines } from '../adapters/file/whole-machines.ts';
import type { JobPlan } from '../core/ledger/entry.ts';
import { buildPlan } from '../core/ledger/template.ts';
import { featureLine } from '../shop/bench/feature-line.ts';
import { limitTexts } from '../shop/bench/limit-texts.ts';
import { benchPlan } from '../shop/order/bench-plan.ts';
import { type GaugeFigure, type GaugeRow, gauge } from './gauge.ts';
import { nodesOf, type Shape } from './shape.ts';
import { textWidth } from './text.ts';

interface Box {
  readonly words: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Boxes of all words of a drawing; letters reach about 0.74 of their size over the baseline and 0.2 under it. */
const boxes = (root: Shape): Box[] =>
  nodesOf(root)
    .filter((node) => node.tag === 'text')
    .map((node) => {
      const words = String(node.children[0]);
      const size = Number(node.attributes['font-size']);
      const wide = textWidth(words, size);
      const anchor = node.attributes['text-anchor'];
      const left = Number(node.attributes.x) - (anchor === 'end' ? wide : anchor === 'middle' ? wide / 2 : 0);
      const y = Number(node.attributes.y);
      return { words, left, right: left + wide, top: y - 0.74 * size, bottom: y + 0.2 * size };
    });

function faults(root: Shape): string[] {
  const [, , width, height] = String(root.attributes.viewBox).split(' ').map(Number);
  const all = boxes(root);
  return [
    ...all.flatMap((a, k) =>
      all
        .slice(k + 1)
        .filter(
          (b) =>
            a.left < b.right - 0.5 &&
            b.left < a.right - 0.5 &&
            a.top < b.bottom - 0.5 &&
            b.top < a.bottom - 0.5,
        )
        .map((b) => `“${a.words}” over “${b.words}”`),
    ),
    ...all
      .filter((one) => one.left < -1 || one.right > width! + 1 || one.top < 0 || one.bottom > height!)
      .map((one) => `“${one.words}” off the sheet`),
  ];
}

const templates = readTemplates();
const plans: JobPlan[] = [
  ...templates.map((template) => {
    const built = buildPlan(template, {}, template.id);
    if (!built.ok) throw new Error(template.id);
    return built.plan;
  }),
  ...readWholeMachines().flatMap((machine) =>
    machine.steps.flatMap((step) => benchPlan(machine, step.id, templates) ?? []),
  ),
];

/** Gauges of a feature whose value stands all over its band: before, now and foretold. */
function* gauges(plan: JobPlan, name: string, units: 'metric' | 'inch', width: number) {
  const target = plan.targets.find((one) => one.feature === name);
  const [low, high] = target ? [target.low, target.high] : [-10, 10];
  const span = Math.max(high - low, 4);
  for (const past of [-6, -1.5, 0.5, 2, 7])
    for (const now of [-4, -0.6, 0.5, 1.4, 5])
      for (const next of [-0.4, 0.4, 1.6])
        for (const show of [true, false]) {
          const value = (k: number, sd: number) => ({ name, value: low + k * span, sd: sd * span });
          const lineOf = (k: number, sd: number) => featureLine(plan, value(k, sd), units);
          const { scale, ...line } = lineOf(now, 0.12);
          const { words, shown, say } = scale;
          const limits = limitTexts(scale);
          const row = (kind: GaugeRow['kind'], label: string, k: number, sd: number): GaugeRow => {
            const said = say(low + k * span, { sd: sd * span });
            const text = `${said.sign}${said.number} ± ${said.doubt ?? '0'}`;
            return {
              kind,
              label,
              value: shown(low + k * span),
              doubt: shown(2 * sd * span),
              text: kind === 'forecast' ? `forecast ${text}` : text,
            };
          };
          const figure: GaugeFigure = {
            title: name,
            width,
            band:
              target && limits
                ? {
                    low: shown(target.low),
                    high: shown(target.high),
                    low_text: limits.low,
                    high_text: limits.high,
                  }
                : {},
            rows: [
              row('past', 'R1', past, 0.2),
              {
                ...row('now', 'now', now, 0.12),
                ...(line.judged ? { verdict: line.judged.verdict } : {}),
                ...(line.to_go ? { to_go: line.to_go } : {}),
              },
              row('forecast', 'R3', next, 0.4),
            ],
            ...(words ? { minus_word: words.minus, plus_word: words.plus } : {}),
            show_now_text: show,
          };
          yield figure;
        }
}

describe('the words of a gauge', () => {
  it('are those of every template and of every bench of every machine', () => {
    const all = plans.flatMap((plan) => plan.words.flatMap((one) => [one.minus, one.plus]));
    expect(all).toContain('leaning to the column on the left');
    expect(new Set(all).size).toBeGreaterThan(20);
  });

  for (const width of [326, 358])
    for (const units of ['metric', 'inch'] as const)
      it(`stand clear of each other at ${width} px, ${units}, wherever the pins stand`, () => {
        const found = new Set<string>();
        const seen = new Set<string>();
        let drawn = 0;
        for (const plan of plans)
          for (const { name } of plan.features) {
            const words = plan.words.find((one) => one.feature === name);
            const target = plan.targets.find((one) => one.feature === name);
            const key = JSON.stringify([words, target]);
            if (seen.has(key)) continue;
            seen.add(key);
            for (const figure of gauges(plan, name, units, width)) {
              drawn += 1;
              for (const fault of faults(gauge(figure))) found.add(fault);
            }
          }
        expect(drawn).toBeGreaterThan(1000);
        expect([...found].slice(0, 20)).toEqual([]);
      });
});
