// Builds the library, command line and server (TypeScript to dist/) and the page (Vite to dist/web/).
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';

function run(args) {
  const done = spawnSync('npx', ['--no-install', ...args], {
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (done.status !== 0) process.exit(done.status ?? 1);
}

rmSync('dist', { recursive: true, force: true });
mkdirSync('dist', { recursive: true });
run(['tsc', '-p', 'tsconfig.build.json']);
if (existsSync('src/faces/web/vite.config.ts'))
  run(['vite', 'build', '--config', 'src/faces/web/vite.config.ts', '--logLevel', 'warn']);
run(['vite', 'build', '--config', 'scripts/cli.vite.mjs', '--logLevel', 'warn']);
if (existsSync('dist/faces/cli/main.js')) chmodSync('dist/faces/cli/main.js', 0o755);
// The sheet that the Signs screen offers to print, for either paper.
if (existsSync('dist/web'))
  for (const paper of ['a4', 'letter']) {
    const words = ['card', '--bench', '--paper', paper, '--out', `dist/web/bench-card-${paper}.pdf`];
    const { status } = spawnSync(process.execPath, ['dist/faces/cli/main.js', ...words]);
    if (status !== 0) throw new Error(`waywright ${words.join(' ')} ended with ${status}`);
  }
// The last thing written: a build that broke off is seen as missing.
writeFileSync('dist/.built', '');
