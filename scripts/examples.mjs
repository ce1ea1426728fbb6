// Writes what the commands of the pages print now under each of them. Usage: npm run build && node scripts/examples.mjs
import { spawnSync } from 'node:child_process';

const words = ['--no-install', 'vitest', 'run', '--project', 'server', 'tests/server/docs-examples.test.ts'];
const { status } = spawnSync('npx', words, {
  stdio: 'inherit',
  env: { ...process.env, WAYWRIGHT_WRITE_EXAMPLES: 'yes' },
  shell: process.platform === 'win32',
});
process.exitCode = status ?? 1;
