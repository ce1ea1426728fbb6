import { createHash, randomBytes, randomInt, timingSafeEqual } from 'node:crypto';
import type { DeviceLine } from '../../contract/share.ts';
import {
  type DeviceLog,
  type Devices,
  type Invitations,
  mostWrong,
  ShareState,
} from '../../shop/share/devices.ts';

/** How long an invitation is good for, ms. */
export const invitationLasts_ms = 10 * 60_000;
/** A device's being here is written down no more often than this, ms. */
const seenEvery_ms = 10 * 60_000;
/** Letters and figures that are not taken for each other. */
const alphabet = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const codeLength = 8;

const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');
const same = (a: string, b: string): boolean => timingSafeEqual(Buffer.from(a), Buffer.from(b));
const mark = (): string => randomBytes(8).toString('hex');

/** What may be mistaken when a code is read from a screen: small letters, spaces and dashes, O for 0, I and L for 1. */
const plain = (code: string): string =>
  code.toUpperCase().replace(/[\s-]/g, '').replaceAll('O', '0').replace(/[IL]/g, '1');

/**
 * Who is let in, over lines that all servers of a workshop share: an invitation made at one is honoured at every other, once, and a
 * key that one takes away is gone for all.
 * @param now  ms since 1970, given by tests
 */
export function deviceDesk(
  log: DeviceLog,
  now: () => number = Date.now,
): { readonly devices: Devices; readonly invitations: Invitations } {
  let state = new ShareState();
  let heard = Number.NEGATIVE_INFINITY;
  let hearing: Promise<void> | undefined;
  let next: Promise<void> | undefined;

  const hear = (): Promise<void> => {
    const began = performance.now();
    const one = log
      .news()
      .then(({ lines, anew }) => {
        if (anew) state = new ShareState();
        for (const line of lines) state.add(line);
        heard = began;
      })
      .finally(() => {
        hearing = undefined;
      });
    hearing = one;
    return one;
  };
  const fresh = (most_ms = 0): Promise<void> => {
    if (performance.now() - heard < most_ms) return Promise.resolve();
    if (!hearing) return hear();
    // What is being heard was asked before this was: another may have written since. All who wait meanwhile hear together.
    next ??= hearing
      .catch(() => undefined)
      .then(() => {
        next = undefined;
        return hear();
      });
    return next;
  };
  const at = (): string => new Date(now()).toISOString();
  const add = async (line: DeviceLine): Promise<void> => {
    await log.add(line);
    await fresh();
  };

  const devices: Devices = {
    fresh,
    list: () => [...state.byKey.values()],
    holding: (key) => state.byKey.get(key),
    letIn: async ({ name, role, keySha256 }) => {
      await add({ kind: 'let in', id: mark(), name, role, key_sha256: keySha256, at: at() });
      return state.byKey.get(keySha256)!;
    },
    remove: async (id) => {
      await fresh();
      if (!devices.list().some((one) => one.id === id)) return false;
      await add({ kind: 'removed', id, at: at() });
      return true;
    },
    saw: async ({ id, seen }) => {
      if (now() - Date.parse(seen) >= seenEvery_ms) await add({ kind: 'seen', id, at: at() });
    },
  };

  const invitations: Invitations = {
    make: async (role) => {
      const letters = Array.from({ length: codeLength }, () => alphabet[randomInt(alphabet.length)]).join('');
      const secret = randomBytes(32).toString('base64url');
      const ends = now() + invitationLasts_ms;
      await add({
        kind: 'invited',
        id: mark(),
        role,
        secret_sha256: sha256(secret),
        code_sha256: sha256(letters),
        ends: new Date(ends).toISOString(),
        at: at(),
      });
      return { secret, code: `${letters.slice(0, 4)}-${letters.slice(4)}`, role, ends };
    },
    take: async (typed) => {
      await fresh();
      const open = [...state.open.values()].filter((one) => Date.parse(one.ends) > now());
      const [secret, code] = [sha256(typed), sha256(plain(typed))];
      const found = open.filter((one) => same(one.secret_sha256, secret) || same(one.code_sha256, code))[0];
      if (!found) {
        // What could be guessed is open: else nobody can fill the list with tries.
        if (open.length > 0) await add({ kind: 'guessed', at: at() });
        return state.wrong >= mostWrong ? 'closed' : 'not known';
      }
      const by = mark();
      await add({ kind: 'taken', id: found.id, by, at: at() });
      return state.takenBy.get(found.id) === by ? found.role : 'not known';
    },
  };
  return { devices, invitations };
}
