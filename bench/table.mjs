import { readFileSync, writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';

const figure = (value, unit) => {
  if (value === undefined) return '';
  const digits = value >= 100 ? 0 : value >= 10 ? 1 : value >= 1 ? 2 : 3;
  return `${value.toFixed(digits)} ${unit}`;
};

/** As text, one line a timing: what, median and worst, its aim, HiGHS' own median, the reference and the ratio to it. */
export function table(timings) {
  const heads = ['what', 'median', 'worst', 'aim', 'HiGHS alone', 'reference', 'median', 'ours / reference'];
  const rows = timings.map(({ what, times, unit = 'ms', aim, highs, reference }) => [
    what,
    figure(times.median, unit),
    times.worst === undefined ? '' : figure(times.worst, unit),
    aim ?? '',
    highs === undefined ? '' : figure(highs.median, 'ms'),
    reference?.name ?? '',
    reference ? figure(reference.times.median, unit) : '',
    reference ? (times.median / reference.times.median).toPrecision(2) : '',
  ]);
  const wide = heads.map((head, c) => Math.max(head.length, ...rows.map((row) => row[c].length)));
  const line = (cells) =>
    cells
      .map((cell, c) => cell.padEnd(wide[c]))
      .join('  ')
      .trimEnd();
  return [line(heads), line(wide.map((w) => '─'.repeat(w))), ...rows.map(line)].join('\n');
}

/** What the figures were taken on. */
export const machine = () =>
  `Node ${process.version}, ${process.platform} ${process.arch}, ${cpus().length} cores, load average ${loadavg()[0].toFixed(1)} at the end.`;

/** Puts text between the marks of docs/bench.md: "run begins" and "run ends", or another name. */
export function writePage(text, name = 'run') {
  const page = new URL('../docs/bench.md', import.meta.url);
  const [begins, ends] = [`<!-- ${name} begins -->`, `<!-- ${name} ends -->`];
  const [before, rest] = readFileSync(page, 'utf8').split(begins);
  const after = rest.split(ends)[1];
  writeFileSync(page, `${before}${begins}\n\n${text}\n\n${ends}${after}`);
}
