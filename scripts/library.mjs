// Writes docs/library.md from the docstrings and the examples. Usage: npm run build && node scripts/library.mjs
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { libraryPage, scripts } from './library-page.mjs';

const said = Object.fromEntries(
  scripts().map(({ file }) => [file, execFileSync(process.execPath, [file], { encoding: 'utf8' }).trimEnd()]),
);
writeFileSync('docs/library.md', libraryPage(said));
console.log('docs/library.md');
