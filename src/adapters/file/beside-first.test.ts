import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { transformWithOxc } from 'vite';
import { expect, it } from 'vitest';
import { besideFirst } from './beside-first.ts';

const folder = () => mkdtempSync(join(tmpdir(), 'waywright-beside-'));

it('what fails leaves the file as it was, and nothing beside it', async () => {
  const here = folder();
  writeFileSync(join(here, 'a.txt'), 'before');
  await expect(
    besideFirst(join(here, 'a.txt'), async (beside) => {
      writeFileSync(beside, 'half');
      throw new Error('no room');
    }),
  ).rejects.toThrow('no room');
  expect(readdirSync(here)).toEqual(['a.txt']);
  expect(readFileSync(join(here, 'a.txt'), 'utf8')).toBe('before');
});

it('stopped with Ctrl+C in the middle, it dies of the signal and leaves nothing half written', async () => {
  const here = folder();
  // As a program of its own: the module alone, without its types.
  const module = new URL('./beside-first.ts', import.meta.url).pathname;
  const plain = await transformWithOxc(readFileSync(module, 'utf8'), module);
  writeFileSync(join(here, 'beside-first.mjs'), plain.code);
  writeFileSync(
    join(here, 'run.mjs'),
    `import { writeFileSync } from 'node:fs';
      import { besideFirst } from './beside-first.mjs';
      setInterval(() => {}, 1000);
      await besideFirst('a.txt', (beside) => {
        writeFileSync(beside, 'half');
        console.log('half');
        return new Promise(() => {});
      });`,
  );
  const child = spawn(process.execPath, ['run.mjs'], { cwd: here, stdio: ['ignore', 'pipe', 'inherit'] });
  await once(child.stdout, 'data');
  expect(readdirSync(here)).toHaveLength(3);
  child.kill('SIGINT');
  const [code_, signal] = await once(child, 'exit');
  expect([code_, signal]).toEqual([null, 'SIGINT']);
  expect(readdirSync(here).sort()).toEqual(['beside-first.mjs', 'run.mjs']);
});
