// Makes a fresh clone ready to start or test, with nothing but Node and npm: installs what is missing, builds what is old.
// Usage: node scripts/ready.mjs start|test
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { delimiter, join } from 'node:path';

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
  ...[
    'src',
    'machines',
    'demo',
    'package-lock.json',
    'tsconfig.build.json',
    'scripts/build.mjs',
    'scripts/cli.vite.mjs',
  ].map(newest),
);
if (time('dist/.built') < sources) run('npm', ['run', 'build', '--silent']);

const chromiumPaths = [
  process.env.CHROMIUM,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
];
const debianServers = '/usr/lib/postgresql';
const serverFolders = [
  ...(existsSync(debianServers) ? readdirSync(debianServers) : []).map((name) =>
    join(debianServers, name, 'bin'),
  ),
  ...(process.env.PATH ?? '').split(delimiter),
];

/** What the tests need besides Node: Debian's package of it, and whether it is here. */
const needed = [
  {
    what: 'the browser tests need Chromium',
    packageName: 'chromium',
    orElse: 'set CHROMIUM to its path',
    here: chromiumPaths.some((path) => path && existsSync(path)),
  },
  {
    what: 'the tests of shared workshops need a PostgreSQL server',
    packageName: 'postgresql',
    orElse: 'put initdb and postgres on PATH',
    here: serverFolders.some((folder) =>
      ['initdb', 'postgres'].every((name) => existsSync(join(folder, name))),
    ),
  },
];
const lacking = purpose === 'test' ? needed.filter(({ here }) => !here) : [];
if (lacking.length > 0) {
  if (existsSync('/etc/debian_version') && process.getuid?.() === 0) {
    const env = { DEBIAN_FRONTEND: 'noninteractive' };
    run('apt-get', ['update'], env);
    for (const { packageName } of lacking)
      run('apt-get', ['install', '-y', '--no-install-recommends', packageName], env);
  } else {
    for (const { what, packageName, orElse } of lacking)
      console.error(`ready: ${what}; install it (on Debian: apt-get install ${packageName}) or ${orElse}.`);
    process.exit(1);
  }
}
