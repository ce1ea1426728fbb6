import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { type JobFile, jobFile } from '../../contract/job-file.ts';
import { parsedJson } from '../../contract/refusal.ts';
import { packageRoot } from './package-root.ts';

/** The workshop's file: in the folder that WAYWRIGHT_DATA names, or in ./workshop. */
export const workshopFile = (): string =>
  join(resolve(process.env.WAYWRIGHT_DATA ?? 'workshop'), 'workshop.db');

/** Files of the invented jobs, in the order that a new workshop lists them; it opens with the first. */
const demos = ['saddle', 'lathe', 'mill'];

/** The invented jobs that a new workshop comes with; none when the package comes without them. */
export const demoJobs = (): JobFile[] =>
  demos.flatMap((name) => {
    const file = join(packageRoot(), 'demo', `${name}.job.json`);
    return existsSync(file) ? [jobFile(parsedJson(readFileSync(file, 'utf8')))] : [];
  });
