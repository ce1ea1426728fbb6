// Makes a fresh clone ready to start or test, with nothing but Node and npm: installs what is missing, builds what is old.
// Usage: node scripts/ready.mjs start|test
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

const purpose = process.argv[2] ?? 'start';

function run(command, args, env = {}) {
  const done = spawnSync(command, args, {
    stdio: 'inherit',
    env: { ...process.env, ...env },
    shell: process.platform === 'win32',
  });
  if (done.status !== 0) {
    console.error(`ready: "${[command, ...args].join(' ')}" ended with ${done.status ?? done.signal}`);
    process.exit(done.status ?? 1);
  }
}

const time = (path) => (existsSync(path) ? statSync(path).mtimeMs : 0);

function newest(path) {
  if (!existsSync(path)) return 0;
  const info = statSync(path);
  if (!info.isDirectory()) return info.mtimeMs;
  return Math.max(0, ...readdirSync(path).map((name) => newest(join(path, name))));
}

// npm writes node_modules/.package-lock.json at the end of an install: its age is the install's.
if (time('node_modules/.package-lock.json') < time('package-lock.json'))
  run('npm', ['ci', '--no-audit', '--no-fund']);

const sources = Math.max(
  ...['src', 'machines', 'demo', 'package-lock.json', 'tsconfig.build.json', 'scripts/build.mjs'].map(newest),
);
if (time('dist/.built') < sources) run('npm', ['run', 'build', '--silent']);

const chromiumPaths = [
  process.env.CHROMIUM,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
];
if (purpose === 'test' && !chromiumPaths.some((path) => path && existsSync(path))) {
  if (existsSync('/etc/debian_version') && process.getuid?.() === 0) {
    const env = { DEBIAN_FRONTEND: 'noninteractive' };
    run('apt-get', ['update'], env);
    run('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], env);
  } else {
    console.error(
      'ready: the browser tests need Chromium; install it (on Debian: apt-get install chromium) or set CHROMIUM to its path.',
    );
    process.exit(1);
  }
}
