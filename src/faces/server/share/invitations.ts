import { createHash, randomBytes, randomInt, timingSafeEqual } from 'node:crypto';
import type { Role } from '../../../contract/share.ts';

/** How long an invitation is good for, ms. */
export const invitationLasts_ms = 10 * 60_000;
/** Wrong short codes after which every open invitation is closed: 10 guesses in 32^8. */
const mostWrong = 10;
/** Letters and figures that are not taken for each other. */
const alphabet = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const codeLength = 8;

/** Lets one device in, once, until it ends. */
export interface Invitation {
  /** For the link: 256 random bits, base64url. */
  readonly secret: string;
  /** To be typed: 8 letters and figures, 40 random bits, with a dash in the middle. */
  readonly code: string;
  readonly role: Role;
  /** ms since 1970 */
  readonly ends: number;
}

export interface Invitations {
  readonly make: (role: Role) => Invitation;
  /** Takes an invitation up, by its secret or its short code: its role, or why not. It is used up then. */
  readonly take: (typed: string) => Role | 'not known' | 'closed';
  /** Withdraws all that are open. */
  readonly close: () => void;
}

export const sha256 = (text: string): Buffer => createHash('sha256').update(text).digest();

/** What may be mistaken when a code is read from a screen: small letters, spaces and dashes, O for 0, I and L for 1. */
const plain = (code: string): string =>
  code.toUpperCase().replace(/[\s-]/g, '').replaceAll('O', '0').replace(/[IL]/g, '1');

/** Invitations live in memory: a restart withdraws them. @param now  ms since 1970 */
export function openInvitations(now: () => number = Date.now): Invitations {
  let open: Invitation[] = [];
  let wrong = 0;
  const same = (a: string, b: string) => timingSafeEqual(sha256(a), sha256(b));
  return {
    make: (role) => {
      const letters = Array.from({ length: codeLength }, () => alphabet[randomInt(alphabet.length)]).join('');
      const made = {
        secret: randomBytes(32).toString('base64url'),
        code: `${letters.slice(0, 4)}-${letters.slice(4)}`,
        role,
        ends: now() + invitationLasts_ms,
      };
      open = [...open.filter((one) => one.ends > now()).slice(-9), made];
      wrong = 0;
      return made;
    },
    take: (typed) => {
      open = open.filter((one) => one.ends > now());
      const found = open.filter((one) => same(one.secret, typed) || same(plain(one.code), plain(typed)))[0];
      if (found) {
        open = open.filter((one) => one !== found);
        return found.role;
      }
      wrong += 1;
      if (wrong < mostWrong) return 'not known';
      open = [];
      return 'closed';
    },
    close: () => {
      open = [];
    },
  };
}
