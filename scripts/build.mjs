// Builds the library, command line and server (TypeScript to dist/) and the page (Vite to dist/web/).
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';

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
if (existsSync('dist/web')) for (const folder of ['dist/web', 'dist/web/assets']) compressIn(folder);
// The sheet that the Signs screen offers to print, for either paper.
if (existsSync('dist/web'))
  for (const paper of ['a4', 'letter']) {
    const words = ['card', '--bench', '--paper', paper, '--out', `dist/web/bench-card-${paper}.pdf`];
    const { status } = spawnSync(process.execPath, ['dist/faces/cli/main.js', ...words]);
    if (status !== 0) throw new Error(`waywright ${words.join(' ')} ended with ${status}`);
  }
/** Lays compressed twins beside the texts of a folder: the page crosses the shop's network in a third of its size. */
function compressIn(folder) {
  for (const name of readdirSync(folder)) {
    if (!/\.(?:js|css|svg|html)$/.test(name)) continue;
    const path = join(folder, name);
    const bytes = readFileSync(path);
    const twins = {
      br: brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 10 } }),
      gz: gzipSync(bytes, { level: 9 }),
    };
    for (const [end, twin] of Object.entries(twins))
      if (twin.length < 0.9 * bytes.length) writeFileSync(`${path}.${end}`, twin);
  }
}

// The last thing written: a build that broke off is seen as missing.
writeFileSync('dist/.built', '');
