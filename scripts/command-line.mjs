// Writes docs/command-line.md from what each verb says with --help. Usage: node scripts/command-line.mjs
import { spawnSync } from 'node:child_process';

const test = 'tests/structure/command-line.test.ts';
const words = ['--no-install', 'vitest', 'run', '--project', 'unit', test, '--update'];
const { status } = spawnSync('npx', words, { stdio: 'inherit', shell: process.platform === 'win32' });
process.exitCode = status ?? 1;
