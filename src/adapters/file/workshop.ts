import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { type JobFile, jobFile } from '../../contract/job-file.ts';
import { parsedJson } from '../../contract/refusal.ts';
import { packageRoot } from './package-root.ts';

/** The workshop's file: in the folder that WAYWRIGHT_DATA names, or in ./workshop. */
export const workshopFile = (): string =>
  join(resolve(process.env.WAYWRIGHT_DATA ?? 'workshop'), 'workshop.db');

/** The invented job that a new workshop opens with, or undefined when the package comes without it. */
export function demoJob(): JobFile | undefined {
  const file = join(packageRoot(), 'demo', 'saddle.job.json');
  return existsSync(file) ? jobFile(parsedJson(readFileSync(file, 'utf8'))) : undefined;
}
