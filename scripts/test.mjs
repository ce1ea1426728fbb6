// Everything that must hold before a change lands: types, format and lint, unused code, then the tests in three groups.
import { spawnSync } from 'node:child_process';

const steps = [
  ['tsc', '-p', 'tsconfig.json'],
  ['biome', 'check', '.'],
  ['knip'],
  ['vitest', 'run', '--project', 'unit'],
  ['vitest', 'run', '--project', 'loop'],
  ['vitest', 'run', '--project', 'face'],
];

for (const step of steps) {
  console.log(`\n> ${step.join(' ')}`);
  const done = spawnSync('npx', ['--no-install', ...step], {
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (done.status !== 0) process.exit(done.status ?? 1);
}
