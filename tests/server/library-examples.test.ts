import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';

const run = promisify(execFile);

interface Exported {
  readonly name: string;
  readonly isType: boolean;
  readonly doc: string;
  readonly signature?: string;
}
interface Page {
  exported(): readonly Exported[];
  scripts(): readonly {
    readonly file: string;
    readonly parts: readonly { readonly names: readonly string[] }[];
  }[];
  libraryPage(said: Readonly<Record<string, string>>): string;
}
/** The page's own maker; a script, so it has no types. */
const maker = '../../scripts/library-page.mjs';
const { exported, scripts, libraryPage } = (await import(maker)) as Page;

describe('the library', () => {
  it('everything it lets out has a docstring, and every function an example', () => {
    const shown = scripts().flatMap(({ parts }) => parts.flatMap(({ names }) => names));
    expect(
      exported()
        .filter((one) => one.doc === '')
        .map((one) => one.name),
    ).toEqual([]);
    const functions = exported().filter((one) => one.signature !== undefined);
    expect(functions.length).toBeGreaterThan(40);
    expect(shown.toSorted()).toEqual(functions.map((one) => one.name).toSorted());
  });
  it('docs/library.md is what the docstrings say and the examples print: else run node scripts/library.mjs', async () => {
    const said: Record<string, string> = {};
    for (const { file } of scripts()) said[file] = (await run(process.execPath, [file])).stdout.trimEnd();
    expect(readFileSync('docs/library.md', 'utf8')).toBe(libraryPage(said));
  });
});
