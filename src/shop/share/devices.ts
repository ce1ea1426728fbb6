import type { DeviceLine, Role } from '../../contract/share.ts';

/** A phone or tablet that was let in. */
export interface Device {
  readonly id: string;
  /** As its user called it. */
  readonly name: string;
  readonly role: Role;
  /** When it was let in, ISO 8601. */
  readonly since: string;
  /** When it last asked for anything, ISO 8601; kept to ten minutes. */
  readonly seen: string;
}

/** Who is in. Of a key only its SHA-256 is kept. An answer to a change means that it is durable. */
export interface Devices {
  /**
   * Hears what other servers wrote; what is asked afterwards is as it stood when this was asked.
   * @param most_ms  not asked again when it was heard so short a while ago
   */
  readonly fresh: (most_ms?: number) => Promise<void>;
  readonly list: () => readonly Device[];
  /** The device whose key has this SHA-256 (64 hex figures); undefined when none has, or it was removed. */
  readonly holding: (keySha256: string) => Device | undefined;
  readonly letIn: (asked: {
    readonly name: string;
    readonly role: Role;
    readonly keySha256: string;
  }) => Promise<Device>;
  /** Takes its key away; false when there is no such device. */
  readonly remove: (id: string) => Promise<boolean>;
  /** Notes that a device is here. */
  readonly saw: (device: Device) => Promise<void>;
}

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
  readonly make: (role: Role) => Promise<Invitation>;
  /** Takes an invitation up, by its secret or its short code: its role, or why not. It is used up then, at every server. */
  readonly take: (typed: string) => Promise<Role | 'not known' | 'closed'>;
}

/** Where lines about devices are kept, shared by all servers of a workshop; they are only ever added. */
export interface DeviceLog {
  /** Lines that were added since it was last asked; all of them, `anew`, where another log stands in its place now. */
  readonly news: () => Promise<{ readonly lines: readonly DeviceLine[]; readonly anew?: boolean }>;
  /** When this answers, the line is durable. */
  readonly add: (line: DeviceLine) => Promise<void>;
}

type Invited = Extract<DeviceLine, { kind: 'invited' }>;

/** Wrong codes after which every open invitation is closed: 10 guesses in 32^8. */
export const mostWrong = 10;
const mostOpen = 10;

/** What the lines so far come to: who is in, and which invitations are open. */
export class ShareState {
  /** Devices that are in, by the SHA-256 of their key. A device that was removed stays out, whatever comes later. */
  readonly byKey = new Map<string, Device>();
  /** Invitations nobody took up yet, by id; some may have ended. */
  readonly open = new Map<string, Invited>();
  /** Who took an invitation up, by its id. */
  readonly takenBy = new Map<string, string>();
  /** Wrong codes since the last invitation was made. */
  wrong = 0;
  readonly #keyOf = new Map<string, string>();

  add(line: DeviceLine): void {
    switch (line.kind) {
      case 'invited':
        this.open.set(line.id, line);
        if (this.open.size > mostOpen) this.open.delete(this.open.keys().next().value!);
        this.wrong = 0;
        return;
      case 'taken':
        if (this.open.delete(line.id)) this.takenBy.set(line.id, line.by);
        return;
      case 'guessed':
        this.wrong += 1;
        if (this.wrong >= mostWrong) this.open.clear();
        return;
      case 'let in': {
        const { id, name, role, at } = line;
        this.#keyOf.set(id, line.key_sha256);
        this.byKey.set(line.key_sha256, { id, name, role, since: at, seen: at });
        return;
      }
      default: {
        const key = this.#keyOf.get(line.id);
        const device = key === undefined ? undefined : this.byKey.get(key);
        if (key === undefined || device === undefined) return;
        if (line.kind === 'removed') this.byKey.delete(key);
        else this.byKey.set(key, { ...device, seen: line.at });
      }
    }
  }
}
