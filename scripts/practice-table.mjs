// Writes docs/practice.md from the built tool's own runs. Usage: npm run build && node scripts/practice-table.mjs [machines] [slips]
// Every slide in both materials, five times over with the slips: an hour or two for 200 and 60.
import { execFile } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { promisify } from 'node:util';

const [machines = '200', slips = '60'] = process.argv.slice(2);
const run = promisify(execFile);
const table = async (material) => {
  const words = ['practise', '--auto', machines, '--slide', 'all', '--material', material];
  if (Number(slips) > 0) words.push('--slips', slips);
  const { stdout } = await run(process.execPath, ['dist/faces/cli/main.js', ...words]);
  return stdout.trim();
};
const tables = await Promise.all([table('liner'), table('iron')]);
writeFileSync(
  'docs/practice.md',
  `# How the tool does on simulated machines

Written by \`scripts/practice-table.mjs\`. Each machine is simulated and its truth hidden from the tool, which measures, blues, scrapes and measures again until it says
stop, at most 25 rounds; seeds from 1. "In band" and "covered" are held against that truth; the 95 % intervals are those of every round, for the removal from the second
round on. Slips are made in one of the first three rounds, where there is room for one; a false alarm is one in a round in which nothing went wrong.

What this does not show: no hand is simulated that learns or tires, and no machine is real.

${tables.join('\n\n')}
`,
);
