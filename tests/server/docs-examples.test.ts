import { execFile } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';
import { consoleExamples, printedAs, rewritten } from '../fixture/console-examples.ts';

const run = promisify(execFile);
const bin = resolve('bin/waywright.mjs');
const pages = ['README.md', ...readdirSync('docs').map((name) => `docs/${name}`)].filter(
  (path) => path.endsWith('.md') && consoleExamples(readFileSync(path, 'utf8')).length > 0,
);

/** "a b" and b c → words, as a shell would take them: quotes and nothing else. */
const wordsOf = (command: string): string[] =>
  [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare!);

describe('what the pages say that a command prints', () => {
  it('there are pages with examples', () => expect(pages).toContain('docs/guided-saddle.md'));
  it.each(pages)('%s', async (path) => {
    const folder = mkdtempSync(join(tmpdir(), 'waywright-docs-'));
    for (const given of ['examples', 'demo', 'machines'])
      cpSync(given, join(folder, given), { recursive: true });
    const page = readFileSync(path, 'utf8');
    const outs: string[] = [];
    const wrong: string[] = [];
    for (const example of consoleExamples(page)) {
      const [npx, name, ...words] = wordsOf(example.command);
      expect([npx, name], example.command).toEqual(['npx', 'waywright']);
      const { stdout } = await run(process.execPath, [bin, ...words], {
        cwd: folder,
        env: { ...process.env, WAYWRIGHT_DATA: join(folder, 'workshop'), DATABASE_URL: '' },
      });
      outs.push(stdout);
      if (!printedAs(example, stdout)) wrong.push(`$ ${example.command}\n${stdout}`);
    }
    if (process.env.WAYWRIGHT_WRITE_EXAMPLES) writeFileSync(path, rewritten(page, outs));
    else expect(wrong, 'else run node scripts/examples.mjs and read what changed').toEqual([]);
  });
});
