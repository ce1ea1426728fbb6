// Runs the checks and writes docs/trust.md from what they compared. Usage: node scripts/trust-table.mjs
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const folder = mkdtempSync(join(tmpdir(), 'waywright-trust-'));
const ran = spawnSync('npx', ['--no-install', 'vitest', 'run', '--project', 'unit', 'checks/'], {
  stdio: 'inherit',
  env: { ...process.env, WAYWRIGHT_TRUST: folder },
  shell: process.platform === 'win32',
});
if (ran.status !== 0) process.exit(ran.status ?? 1);

const sections = new Map(
  readdirSync(folder).map((file) => {
    const { name, ...rest } = JSON.parse(readFileSync(join(folder, file), 'utf8'));
    return [name, rest];
  }),
);
rmSync(folder, { recursive: true });

/** Name, what is held, source, how it came: the table of checks/README.md. */
const sources = [
  ...readFileSync('checks/README.md', 'utf8').matchAll(/^\| ([a-z0-9-]+) +\|(.+)\|(.+)\|(.+)\|$/gm),
]
  .map((row) => row.slice(1).map((cell) => cell.trim()))
  .filter(([name]) => sections.has(name));

const page = `# Why the numbers can be trusted

Written by \`node scripts/trust-table.mjs\` from a run of the checks; a check whose part of this page is not what it gives fails.

Each row is a comparison that the tests make every time. **Held against** is the number of the source, as printed where it is in print; **ours** is what the program worked
out, shown to a tenth of what may lie between; **apart** is what lies between the two (0: less than a hundredth of what may); **allowed** is half the last printed digit
unless a check needs less or more and says so. All four are in the unit of the row's title; a row without one belongs to the title above. What is only counted, with no
number in print to hold it against (false alarms and seen slips of a survey), is not listed.

How a number came to us is said for each source, and in brackets in a row's title where it came otherwise:

| how | means |
| --- | --- |
| seen | read in the source, or computed beside ours by another program in the same run |
| second hand | read in a document that quotes the source |
| from memory | the source was not at hand; recomputed, so at least consistent with itself |
| derived | follows from a rule or a definition, worked by hand: no evidence from outside |
| common practice | what the trade does; no standard says it, shops differ, and each is a default that may be changed |

What this does not show: no machine was measured. How the whole tool does on simulated machines whose truth it cannot see is in [practice.md](practice.md); what is
expected of a whole machine's chart in [acceptance.md](acceptance.md).

## Sources

"Furthest" is the largest share of the allowed difference that any comparison of the file used up; 0 is less than a hundredth.

| check | what is held | source | how it came | comparisons | furthest |
| --- | --- | --- | --- | --- | --- |
${sources.map(([name, held, source, came]) => `| [${name}](#${name}) | ${held} | ${source} | ${came} | ${sections.get(name).row}`).join('\n')}

${sources.map(([name, held, source, came]) => `## ${name}\n\n${held[0].toUpperCase()}${held.slice(1)}. Source: ${source}. How it came: ${came}.\n\n${sections.get(name).body}`).join('\n\n')}
`;
writeFileSync('docs/trust.md', page);
console.log(`docs/trust.md: ${sources.length} sources`);
