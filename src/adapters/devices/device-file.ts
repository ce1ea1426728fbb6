import {
  closeSync,
  fstatSync,
  fsyncSync,
  openSync,
  readFileSync,
  readSync,
  statSync,
  writeSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { BadInput, parsedJson } from '../../contract/refusal.ts';
import { type DeviceLine, deviceLine } from '../../contract/share.ts';
import type { DeviceLog } from '../../shop/share/devices.ts';
import { Fault } from '../../shop/store.ts';
import { makeFolder } from '../file/make-folder.ts';
import { worded } from '../store/sqlite-faults.ts';

/**
 * Devices in a file of lines beside the workshop's, for its owner's eyes only. Lines are only ever added, each forced to the
 * disk before it is answered; its length is looked at before every question, and only what came since is read.
 */
export function deviceFile(file: string): DeviceLog {
  const start = { bytes: 0, lines: 0, inode: 0 };
  let read = start;
  return {
    news: async () => {
      const { size = 0, ino = 0 } = statSync(file, { throwIfNoEntry: false }) ?? {};
      // Taken away, or another in its place: what it said no longer counts.
      const anew = read.bytes > 0 && (size < read.bytes || ino !== read.inode);
      const from = anew ? start : read;
      if (size === from.bytes) {
        read = from;
        return { lines: [], anew };
      }
      const text = tail(file, from.bytes, size);
      // A last line without its end is not whole yet, or was never acknowledged.
      const whole = text.subarray(0, text.lastIndexOf(0x0a) + 1);
      const fresh = whole.toString('utf8').split('\n').slice(0, -1);
      const lines = fresh.flatMap((line, k) => lineOf(line, file, from.lines + k + 1));
      read = { bytes: from.bytes + whole.length, lines: from.lines + fresh.length, inode: ino };
      return { lines, anew };
    },
    add: async (line) => {
      try {
        append(file, line);
      } catch (failure) {
        throw worded(failure, file);
      }
    },
  };
}

function tail(file: string, from: number, to: number): Buffer {
  if (from === 0) return readFileSync(file);
  const open = openSync(file, 'r');
  try {
    const bytes = Buffer.alloc(to - from);
    const got = readSync(open, bytes, 0, bytes.length, from);
    return bytes.subarray(0, got);
  } finally {
    closeSync(open);
  }
}

/** A line that cannot be read might be one that keeps somebody out. */
function lineOf(text: string, file: string, number: number): DeviceLine[] {
  if (text === '') return [];
  try {
    return [deviceLine(parsedJson(text))];
  } catch (failure) {
    if (!(failure instanceof BadInput)) throw failure;
    // A crash left part of a line, and the next was begun on a new one.
    if (text.startsWith('{') && !text.endsWith('}')) return [];
    throw new Fault(
      'damaged',
      `${file}: line ${number} cannot be read (${failure.message}); nobody is let in by it. Take the file away and let the devices in again`,
    );
  }
}

function append(file: string, line: DeviceLine): void {
  makeFolder(dirname(file));
  const open = openSync(file, 'a+', 0o600);
  try {
    const { size } = fstatSync(open);
    const last = Buffer.alloc(1);
    if (size > 0) readSync(open, last, 0, 1, size - 1);
    const broken = size > 0 && last.toString() !== '\n';
    writeSync(open, `${broken ? '\n' : ''}${JSON.stringify(line)}\n`);
    fsyncSync(open);
  } finally {
    closeSync(open);
  }
}
