import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { BadInput, parsedJson } from '../../contract/refusal.ts';
import { type Template, templateInput } from '../../contract/template.ts';
import { packageRoot } from './package-root.ts';

/**
 * The machines that come with the package, one JSON file each, by name.
 * @throws BadInput  naming the file and the field that does not fit
 */
export function readTemplates(folder: string = join(packageRoot(), 'machines')): Template[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => {
      try {
        return templateInput(parsedJson(readFileSync(join(folder, name), 'utf8')));
      } catch (failure) {
        if (!(failure instanceof BadInput)) throw failure;
        throw new BadInput(failure.issues.map((issue) => ({ ...issue, path: `${name}: ${issue.path}` })));
      }
    });
}
