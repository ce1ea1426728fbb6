import type { JobPlan } from '../../core/ledger/entry.ts';
import { sayDeviation } from '../../core/quantity/say.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { featureScale } from '../../shop/bench/feature-scale.ts';
import type { OrderAnswer, StepShown } from '../../shop/order/order.ts';
import { table } from './table.ts';

const hours = (value: number): string => (value >= 10 ? value.toFixed(0) : value.toFixed(1));

/** The order of work, for people. */
export function orderText(answer: OrderAnswer): string {
  const { forecast } = answer;
  const rows = answer.steps.map((step) => [
    step.status === 'to be re-proven' && step.waits.length === 0 ? 'to be re-proven, now' : step.status,
    step.id,
    step.title,
    hours(step.hours_spent),
    step.status === 'done' ? '' : `${hours(step.hours_left)} ± ${hours(2 * step.hours_left_sd)}`,
  ]);
  const why = answer.steps.flatMap((step) => {
    const lines = [
      ...step.because.map((text) => `to be re-proven: ${text}`),
      ...step.waits.map((text) => `waits: ${text}`),
    ];
    return lines.length === 0 ? [] : [`${step.id}\n${lines.map((line) => `  ${line}`).join('\n')}`];
  });
  return [
    answer.text,
    table(['', 'step', '', 'spent, h', 'left, h'], rows),
    `Spent ${hours(forecast.spent)} h; left ${hours(forecast.left.hours)} ± ${hours(2 * forecast.left.sd)} h, at ${forecast.pace.times.toFixed(2)} times the usual hours.`,
    ...(why.length > 0 ? [`What waits, and why:\n${why.join('\n')}`] : []),
  ].join('\n\n');
}

/** One step by itself. */
export function stepText(step: StepShown, bench: JobPlan | undefined, system: UnitSystem = 'metric'): string {
  const list = (head: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : [`${head}\n${lines.map((line) => `  ${line}`).join('\n')}`];
  return [
    `${step.title} (${step.id}): ${step.status}\n${step.reason}`,
    ...list('To be re-proven', step.because),
    ...list('Waits', step.waits),
    ...list(
      'Proven by',
      step.proofs.map((proof) => `${proof.what}: ${proof.with}`),
    ),
    ...(bench
      ? [
          `Bench: ${step.bench!.slide}, template ${step.bench!.template}`,
          ...list(
            'Set-ups',
            bench.setups.map((setup) => `${setup.name}: ${setup.question} It rides ${setup.rides_words}`),
          ),
          ...list(
            'Targets',
            bench.targets.map((target) => targetText(target, bench, system)),
          ),
          ...list(
            'May sink no further than',
            (bench.sink ?? []).map(
              (limit) =>
                `${limit.name}: ${sayDeviation(limit.most_um, system, { signed: false, decimals: system === 'metric' ? 0 : 1 }).text}`,
            ),
          ),
        ]
      : []),
    ...list('Cautions', bench ? bench.cautions : step.cautions),
  ].join('\n\n');
}

function targetText(target: JobPlan['targets'][number], bench: JobPlan, system: UnitSystem): string {
  const scale = featureScale(bench, target.feature, system);
  const decimals = system === 'metric' ? 1 : 2;
  const [low, high] = [scale.say(target.low, { decimals }), scale.say(target.high, { decimals })];
  return `${target.feature}: ${low.sign}${low.number} to ${high.sign}${high.number} ${high.unit}; plus: ${scale.words!.plus}`;
}
