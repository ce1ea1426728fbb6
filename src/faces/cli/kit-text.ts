import type { KitReport } from '../../shop/kit/kit-report.ts';
import { table } from './table.ts';

/** The references, every set-up against its target in one table, and each in words. */
export function kitText(report: KitReport): string {
  const rows = report.proofs.map((proof) => [
    proof.target,
    proof.setup,
    proof.room_text,
    proof.doubt_text,
    proof.ratio.toFixed(1),
    proof.can,
    proof.limit_text,
  ]);
  return [
    ...(report.references.length
      ? [
          table(
            ['reference', 'known to be'],
            report.references.map((one) => [one.name, one.text]),
          ),
          '',
        ]
      : []),
    table(['target', 'set-up', 'room', 'doubt', 'ratio', 'proves it', 'limited by'], rows),
    '',
    ...report.proofs.flatMap((proof) => [
      `${proof.target}, ${proof.setup}`,
      `  ${proof.sentence}`,
      ...proof.part_texts.map((part) => `    ${part.text}  ${part.what}`),
      ...proof.steps
        .slice(0, 5)
        .map(
          (step) =>
            `    ${step.how.join(', ')} (about ${Math.ceil(step.minutes)} min): ratio ${step.ratio.toFixed(1)}`,
        ),
      '',
    ]),
    'Room: half the band, or what a straightness may be. ± is two standard deviations. Minutes are common practice.',
  ].join('\n');
}
