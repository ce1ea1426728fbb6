import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the package, whether this runs from sources or from the build: the nearest one up with a package.json. */
export function packageRoot(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'package.json'))) {
    const up = dirname(folder);
    if (up === folder) throw new Error('no package.json above the program');
    folder = up;
  }
  return folder;
}

export const packageVersion = (): string =>
  (JSON.parse(readFileSync(join(packageRoot(), 'package.json'), 'utf8')) as { version: string }).version;
