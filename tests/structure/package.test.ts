import { spawnSync } from 'node:child_process';
import {
  accessSync,
  constants,
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const own = JSON.parse(readFileSync('package.json', 'utf8'));

describe('the package', () => {
  it('has the version that the changes begin with', () => {
    const [, version] = /^## (\d+\.\d+\.\d+), \d{4}-\d\d-\d\d$/m.exec(readFileSync('CHANGELOG.md', 'utf8'))!;
    expect(version).toBe(own.version);
  });
  it('holds what the program reads where it runs', () => {
    expect(own.private).toBeUndefined();
    expect(own.files).toEqual(expect.arrayContaining(['bin', 'dist', 'demo/*.json', 'docs', 'machines']));
  });
  it('has a command that stands before anything is built, and says so', () => {
    const bin: string = own.bin.waywright;
    accessSync(bin, constants.X_OK);
    const folder = mkdtempSync(join(tmpdir(), 'waywright-bin-'));
    mkdirSync(join(folder, 'bin'));
    copyFileSync(bin, join(folder, bin));
    const { status, stderr } = spawnSync(process.execPath, [join(folder, bin), '--help'], {
      encoding: 'utf8',
    });
    expect(status).toBe(2);
    expect(stderr).toContain('npm run build');
  });
  it('is opened by the library’s door that it names', () => {
    expect(existsSync(own.exports['.'].default.replace('dist', 'src').replace('.js', '.ts'))).toBe(true);
  });
});
