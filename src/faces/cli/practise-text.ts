import { counted } from '../../shop/phrase.ts';
import type { PractiseReport } from '../../shop/practise/practise.ts';
import type { SlidePractised } from '../../shop/practise/practise-slides.ts';

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
          `${report.fault}  `.padEnd(14) +
            `made in ${faults.made}; flagged within two rounds in ${faults.flagged}, its kind named in ${faults.named}`,
        ]
      : [
          `false alarms  ${alarms.alarms} in ${alarms.rounds} rounds`,
          ...(coverage
            ? [
                `coverage      95 % intervals held the truth: features ${percent(coverage.features)}, removal ${percent(coverage.removal)} (${percent(coverage.removal_at_end)} at each job’s end)`,
              ]
            : []),
        ]),
  ].join('\n');
}

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
const rule = (cells: readonly string[]): string => row(cells.map((cell) => '-'.repeat(cell.length)));

/** All slides' figures as tables: one row a slide, then one a slide with each mistake's flags. */
export function practiseTable(all: readonly SlidePractised[]): string {
  const head = [
    'slide',
    'machines',
    'rounds, median',
    'nine in ten by',
    'passes, median',
    'stopped',
    'in band of those',
    'false alarms',
    'features covered',
    'removal covered',
    'at each job’s end',
  ];
  const lines = all.map(({ clean }) =>
    row([
      `${clean.slide}, ${clean.material}`,
      `${clean.machines}`,
      `${clean.rounds.median}`,
      `${clean.rounds.p90}`,
      `${clean.passes.median}`,
      percent(clean.stopped),
      percent(clean.in_band),
      `${clean.false_alarms.alarms} in ${clean.false_alarms.rounds} rounds`,
      ...[clean.coverage?.features, clean.coverage?.removal, clean.coverage?.removal_at_end].map((share) =>
        share === undefined ? '–' : percent(share),
      ),
    ]),
  );
  const slips = all[0]?.slips ?? [];
  if (slips.length === 0) return [row(head), rule(head), ...lines].join('\n');
  const flaggedHead = ['flagged within two rounds', ...slips.map((report) => report.fault!)];
  const flagged = all.map(({ clean, slips }) =>
    row([
      `${clean.slide}, ${clean.material}`,
      ...slips.map(({ faults }) => (faults ? `${faults.flagged} of ${faults.made}` : '–')),
    ]),
  );
  return [row(head), rule(head), ...lines, '', row(flaggedHead), rule(flaggedHead), ...flagged].join('\n');
}
