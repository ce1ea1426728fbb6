import { existsSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { Fault } from '../../shop/store.ts';
import { makeFolder } from './make-folder.ts';

it('makes what is lacking, and leaves what is there', () => {
  const folder = join(mkdtempSync(join(tmpdir(), 'waywright-')), 'a', 'b', 'c');
  makeFolder(folder);
  makeFolder(folder);
  expect(existsSync(folder)).toBe(true);
});

it('a place where no folder can be is told at once, by name', () => {
  const file = join(mkdtempSync(join(tmpdir(), 'waywright-')), 'a-file');
  writeFileSync(file, '');
  // Linux: /proc says "not there" to the making of a folder, and Node's own recursive mkdir tries for ever.
  const places = [join(file, 'b'), file, ...(existsSync('/proc/self') ? ['/proc/waywright/backups'] : [])];
  for (const place of places) {
    let told: unknown;
    try {
      makeFolder(place);
    } catch (failure) {
      told = failure;
    }
    expect(told).toBeInstanceOf(Fault);
    expect((told as Fault).message).toMatch(
      /a-file.* a file stands there|\/proc\/waywright cannot be made: this is no disk/,
    );
  }
});
