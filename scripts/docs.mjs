// Writes every page that is made, not written: run it when a verb, a route, a docstring or a check changed. Usage: npm run docs
import { spawnSync } from 'node:child_process';

const steps = [
  ['npm', 'run', 'build', '--silent'],
  ['node', 'scripts/openapi.mjs'],
  ['node', 'scripts/command-line.mjs'],
  ['node', 'scripts/examples.mjs'],
  ['node', 'scripts/library.mjs'],
  // The checks take a minute: only when asked for.
  ...(process.argv.includes('--trust') ? [['node', 'scripts/trust-table.mjs']] : []),
];
for (const [command, ...words] of steps) {
  console.log(`\n> ${[command, ...words].join(' ')}`);
  const { status } = spawnSync(command, words, { stdio: 'inherit', shell: process.platform === 'win32' });
  if (status !== 0) process.exit(status ?? 1);
}
