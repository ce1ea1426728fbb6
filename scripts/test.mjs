// Everything that must hold before a change lands: types, format and lint, unused code, then the tests in groups.
// The first run of a test group that drives browsers and server processes may be upset by the machine it runs on (a browser that draws
// no frame for a minute); files that failed are then run once more, alone, and named. A test that fails twice fails.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';

const run = (...step) => {
  console.log(`\n> ${step.join(' ')}`);
  const done = spawnSync('npx', ['--no-install', ...step], {
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  return done.status ?? 1;
};
const must = (...step) => {
  const status = run(...step);
  if (status !== 0) process.exit(status);
};

must('tsc', '-p', 'tsconfig.json');
must('biome', 'check', '.');
must('knip');
must('vitest', 'run', '--project', 'unit', '--project', 'loop');
for (const project of ['server', 'face']) {
  const told = join(mkdtempSync(join(tmpdir(), 'waywright-test-')), 'told.json');
  const status = run(
    ...['vitest', 'run', '--project', project],
    ...['--reporter', 'default', '--reporter', 'json', '--outputFile', told],
  );
  if (status !== 0) again(project, told, status);
}

/** Runs the files that failed once more; ends the run when one fails again, or when it was not files that failed. */
function again(project, told, status) {
  const failed = failedFiles(told);
  if (!failed.length) process.exit(status);
  console.log(`\nFAILED ONCE, run again alone: ${failed.join(', ')}`);
  must('vitest', 'run', '--project', project, ...failed);
  console.log(`\nfailed once and passed the second time: ${failed.join(', ')}`);
}

function failedFiles(told) {
  try {
    return JSON.parse(readFileSync(told, 'utf8'))
      .testResults.filter((file) => file.status === 'failed')
      .map((file) => relative(process.cwd(), file.name));
  } catch {
    return [];
  }
}
