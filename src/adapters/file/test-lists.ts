import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { BadInput, parsedJson } from '../../contract/refusal.ts';
import { testListInput } from '../../contract/test-list.ts';
import type { TestList } from '../../core/chart/acceptance-test.ts';
import { packageRoot } from './package-root.ts';

/**
 * The lists of acceptance tests that come with the package, one JSON file each, by name.
 * @throws BadInput  naming the file and the field that does not fit
 */
export function readTestLists(folder: string = join(packageRoot(), 'machines', 'tests')): TestList[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => {
      try {
        return testListInput(parsedJson(readFileSync(join(folder, name), 'utf8')));
      } catch (failure) {
        if (!(failure instanceof BadInput)) throw failure;
        throw new BadInput(failure.issues.map((issue) => ({ ...issue, path: `${name}: ${issue.path}` })));
      }
    });
}
