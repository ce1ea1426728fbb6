import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { deedKinds } from '../../src/contract/entry.ts';
import { faultStatus } from '../../src/faces/server/refusals.ts';

/** First cells of a document's tables. */
const firstCells = (file: string): string[] =>
  [...readFileSync(file, 'utf8').matchAll(/^\| ([^|]+?) +\|/gm)].map((row) => row[1]!.replaceAll('`', ''));

describe('the docs list', () => {
  it('every kind of entry, and none that does not exist', () => {
    const listed = firstCells('docs/job-file.md').filter((cell) => cell !== 'kind' && !cell.startsWith('-'));
    expect(listed.toSorted()).toEqual(deedKinds.toSorted());
  });
  it('every fault of the disk and the file, with its status', () => {
    const text = readFileSync('docs/http.md', 'utf8');
    for (const [code, status] of Object.entries(faultStatus))
      expect(text).toMatch(new RegExp(`^\\| ${code} +\\| ${status} +\\|`, 'm'));
  });
});
