import { counted } from '../../shop/phrase.ts';
import type { PractiseReport } from '../../shop/practise/practise.ts';

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

/** How the tool did, as figures a person can judge. */
export function practiseText(report: PractiseReport): string {
  const { rounds, passes, false_alarms: alarms, coverage, faults } = report;
  const last = report.seed + report.machines - 1;
  const seeds = last === report.seed ? `seed ${last}` : `seeds ${report.seed} to ${last}`;
  return [
    `${counted(report.machines, 'simulated machine')}, "${report.slide}" in ${report.material}, ${seeds}, at most ${report.most_rounds} rounds; their truth hidden from the tool`,
    '',
    `rounds        median ${rounds.median}, nine in ten by ${rounds.p90}, at most ${rounds.most}`,
    `passes        median ${passes.median} on zones, spotting included`,
    `stopped       ${percent(report.stopped)}`,
    `in band       ${percent(report.in_band)} of those; the worst ${report.worst_out === 0 ? 'inside' : `${report.worst_out.toFixed(2)} half bands out`}`,
    ...(faults
      ? [
          `${report.fault}`.padEnd(14) +
            `made in ${faults.made}; flagged within two rounds in ${faults.flagged}, its kind named in ${faults.named}`,
        ]
      : [
          `false alarms  ${alarms.alarms} in ${alarms.rounds} rounds`,
          ...(coverage
            ? [
                `coverage      95 % intervals held the truth: features ${percent(coverage.features)}, removal ${percent(coverage.removal)}`,
              ]
            : []),
        ]),
  ].join('\n');
}
