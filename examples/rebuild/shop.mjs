// The command line, and nothing but the command line: a workshop of its own in a folder of its own.
import { spawn } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const waywright = fileURLToPath(new URL('../../dist/faces/cli/main.js', import.meta.url));

/** Runs the command line as its user does, a process a call. @returns what it said @throws where it leaves with another code than 0 */
function asProcess(words, folder) {
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, [waywright, ...words], {
      cwd: folder,
      env: { ...process.env, WAYWRIGHT_DATA: join(folder, 'workshop') },
    });
    const out = [];
    const err = [];
    child.stdout.on('data', (part) => out.push(part));
    child.stderr.on('data', (part) => err.push(part));
    child.on('error', fail);
    child.on('close', (code) => {
      if (code === 0) done(Buffer.concat(out).toString('utf8').trimEnd());
      else fail(new Error(`waywright ${words.join(' ')} left with ${code}: ${Buffer.concat(err)}`));
    });
  });
}

/**
 * A shop: `ask` runs a verb and gives its JSON, `say` gives its text; `asking` and `saying` hand it a file made for it.
 * @param runs  how the command line is run; left out, as its user runs it
 */
export function openShop(folder, runs = asProcess) {
  mkdirSync(folder, { recursive: true });
  let files = 0;
  let calls = 0;

  const run = (words) => {
    calls++;
    return runs(words, folder);
  };

  /** What the tool is asked is kept beside what it answered, numbered in the order it was asked. */
  const kept = (name, value) => {
    const file = join(folder, `${String(++files).padStart(3, '0')}-${name}.json`);
    writeFileSync(file, JSON.stringify(value, null, 1));
    return file;
  };

  return {
    folder,
    calls: () => calls,
    say: run,
    ask: async (...words) => JSON.parse(await run([...words, '--json'])),
    asking: async (verb, value, ...words) =>
      JSON.parse(await run([verb, kept(verb, value), ...words, '--json'])),
    saying: async (verb, value, ...words) => run([verb, kept(verb, value), ...words]),
    /** Writes deeds into a job's ledger; with `--show`, where it stands then. */
    write: async (job, deeds, ...words) =>
      JSON.parse(await run(['job', 'write', job, kept(`write-${job}`, deeds), ...words, '--json'])),
  };
}
