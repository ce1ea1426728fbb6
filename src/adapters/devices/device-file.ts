import { randomBytes } from 'node:crypto';
import {
  closeSync,
  fstatSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  readSync,
  statSync,
  writeSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { BadInput, parsedJson } from '../../contract/refusal.ts';
import { type DeviceLine, deviceLine } from '../../contract/share.ts';
import { type Device, type Devices, foldDevices } from '../../shop/share/devices.ts';
import { Fault } from '../../shop/store.ts';

/** A device's being here is written down no more often than this, ms. */
const seenEvery_ms = 10 * 60_000;

/**
 * Devices in a file of lines beside the workshop's, for its owner's eyes only. Lines are only ever added, each forced to the
 * disk before it is answered; its length is looked at before every question, so that what one process takes away is gone for all.
 * @param now  ms since 1970, given by tests
 */
export function deviceFile(file: string, now: () => number = Date.now): Devices {
  let known: { readonly bytes: number; readonly byKey: Map<string, Device> } = { bytes: 0, byKey: new Map() };

  const current = (): Map<string, Device> => {
    const bytes = statSync(file, { throwIfNoEntry: false })?.size ?? 0;
    if (bytes !== known.bytes) known = { bytes, byKey: foldDevices(bytes === 0 ? [] : linesOf(file)) };
    return known.byKey;
  };
  const at = (): string => new Date(now()).toISOString();
  return {
    list: () => [...current().values()],
    holding: (key) => current().get(key),
    letIn: ({ name, role, keySha256 }) => {
      const id = randomBytes(8).toString('hex');
      append(file, { kind: 'let in', id, name, role, key_sha256: keySha256, at: at() });
      return current().get(keySha256)!;
    },
    remove: (id) => {
      if (![...current().values()].some((one) => one.id === id)) return false;
      append(file, { kind: 'removed', id, at: at() });
      return true;
    },
    saw: ({ id, seen }) => {
      if (now() - Date.parse(seen) < seenEvery_ms) return;
      append(file, { kind: 'seen', id, at: at() });
    },
  };
}

/** A last line without its end was never acknowledged; any other that cannot be read might be one that keeps somebody out. */
function linesOf(file: string): DeviceLine[] {
  const whole = readFileSync(file, 'utf8').split('\n').slice(0, -1);
  return whole.flatMap((text, k) => {
    if (text === '') return [];
    try {
      return [deviceLine(parsedJson(text))];
    } catch (failure) {
      if (!(failure instanceof BadInput)) throw failure;
      // A crash left part of a line, and the next was begun on a new one.
      if (text.startsWith('{') && !text.endsWith('}')) return [];
      throw new Fault(
        'damaged',
        `${file}: line ${k + 1} cannot be read (${failure.message}); nobody is let in by it. Take the file away and let the devices in again`,
      );
    }
  });
}

function append(file: string, line: DeviceLine): void {
  mkdirSync(dirname(file), { recursive: true });
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
