import { readFile } from 'node:fs/promises';
import { expect, it } from 'vitest';
import { faultText } from './fault-text.ts';

it('a file that is not there, and a folder that is no file, are named with what is expected', async () => {
  const text = (file: string) => readFile(file, 'utf8').then(String, faultText);
  expect(await text('no-such-way.csv')).toBe(
    'no-such-way.csv: no such file or folder; expected one that is there',
  );
  expect(await text('no-such/x.svg.f701836f.tmp')).toBe(
    'no-such/x.svg: no such file or folder; expected one that is there',
  );
  const other = Object.assign(new Error('the store is busy'), { code: 'SQLITE_BUSY' });
  expect(faultText(other)).toBe('the store is busy');
});
