import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/** Writes `shell-worker.js` beside the built page: the worker with the names of this build's files, and a version made from them. */
export const shellWorker = (): Plugin => ({
  name: 'shell-worker',
  apply: 'build',
  enforce: 'post',
  generateBundle(_options, bundle) {
    const built = Object.values(bundle);
    // Names of files hold their content's hash, the page itself does not.
    const page = built.find((one) => one.fileName === 'index.html');
    const files = [
      '/',
      '/icon.svg',
      ...built.filter((one) => one !== page).map((one) => `/${one.fileName}`),
    ].sort();
    const hash = createHash('sha256').update(files.join('\n'));
    if (page?.type === 'asset') hash.update(page.source);
    const version = hash.digest('hex').slice(0, 16);
    const source = readFileSync(join(import.meta.dirname, 'worker.js'), 'utf8')
      .replace('__VERSION__', version)
      .replace("['__FILES__']", JSON.stringify(files));
    this.emitFile({ type: 'asset', fileName: 'shell-worker.js', source });
  },
});
