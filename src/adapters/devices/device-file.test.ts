import { appendFileSync, mkdtempSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { Fault } from '../../shop/store.ts';
import { deviceFile } from './device-file.ts';

const newFile = () => join(mkdtempSync(join(tmpdir(), 'waywright-devices-')), 'devices.jsonl');
const key = (figure: string) => figure.repeat(64);

describe('the list of devices', () => {
  it('is there after a restart, for its owner’s eyes only, and another process sees a removal at once', () => {
    const file = newFile();
    const one = deviceFile(file);
    const phone = one.letIn({ name: 'Phone', role: 'writer', keySha256: key('a') });
    const other = deviceFile(file);
    expect(other.holding(key('a'))).toEqual(phone);
    expect(statSync(file).mode & 0o077).toBe(0);
    expect(one.remove(phone.id)).toBe(true);
    expect(other.holding(key('a'))).toBeUndefined();
    expect(other.list()).toEqual([]);
    expect(other.remove(phone.id)).toBe(false);
  });

  it('says when a device was here last, to ten minutes', () => {
    const file = newFile();
    let now = Date.parse('2031-11-25T14:00:00Z');
    const devices = deviceFile(file, () => now);
    devices.letIn({ name: 'Phone', role: 'reader', keySha256: key('b') });
    const ask = () => devices.saw(devices.holding(key('b'))!);
    now += 60_000;
    ask();
    expect(devices.list()[0]!.seen).toBe('2031-11-25T14:00:00.000Z');
    now += 600_000;
    ask();
    ask();
    expect(devices.list()[0]!.seen).toBe('2031-11-25T14:11:00.000Z');
    expect(readFileSync(file, 'utf8').split('\n').filter(Boolean)).toHaveLength(2);
  });

  it('a line torn by a crash was never acknowledged, and what is written after it counts', () => {
    const file = newFile();
    const phone = deviceFile(file).letIn({ name: 'Phone', role: 'writer', keySha256: key('c') });
    appendFileSync(file, '{"kind":"let in","id":"0123');
    const again = deviceFile(file);
    expect(again.list()).toHaveLength(1);
    expect(again.remove(phone.id)).toBe(true);
    expect(deviceFile(file).list()).toEqual([]);
  });

  it('a line that cannot be read lets nobody in, since it might be one that keeps somebody out', () => {
    const file = newFile();
    deviceFile(file).letIn({ name: 'Phone', role: 'writer', keySha256: key('d') });
    writeFileSync(file, `${readFileSync(file, 'utf8')}{"kind":"remowed"}\n`);
    expect(() => deviceFile(file).holding(key('d'))).toThrow(Fault);
  });
});
