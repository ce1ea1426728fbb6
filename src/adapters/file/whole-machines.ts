import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { machineInput } from '../../contract/machine.ts';
import { BadInput, parsedJson } from '../../contract/refusal.ts';
import type { Template } from '../../contract/template.ts';
import type { Machine } from '../../core/order/machine.ts';
import { packageRoot } from './package-root.ts';
import { readTemplates } from './templates.ts';

/**
 * The whole machines that come with the package, one JSON file each, by name.
 * @throws BadInput  naming the file and the field that does not fit
 */
export function readWholeMachines(
  folder: string = join(packageRoot(), 'machines', 'whole'),
  templates: readonly Template[] = readTemplates(),
): Machine[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => {
      try {
        return machineInput(parsedJson(readFileSync(join(folder, name), 'utf8')), templates);
      } catch (failure) {
        if (!(failure instanceof BadInput)) throw failure;
        throw new BadInput(failure.issues.map((issue) => ({ ...issue, path: `${name}: ${issue.path}` })));
      }
    });
}
