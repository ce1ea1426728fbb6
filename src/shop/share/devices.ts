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

/** Where the list of devices is kept. Of a key only its SHA-256 is. An answer means that what was asked is durable. */
export interface Devices {
  readonly list: () => readonly Device[];
  /** The device whose key has this SHA-256 (64 hex figures); undefined when none has, or it was removed. */
  readonly holding: (keySha256: string) => Device | undefined;
  readonly letIn: (asked: {
    readonly name: string;
    readonly role: Role;
    readonly keySha256: string;
  }) => Device;
  /** Takes its key away; false when there is no such device. */
  readonly remove: (id: string) => boolean;
  /** Notes that a device is here. */
  readonly saw: (device: Device) => void;
}

/** Devices that are in, by the SHA-256 of their key. A device that was removed stays out, whatever comes later. */
export function foldDevices(lines: readonly DeviceLine[]): Map<string, Device> {
  const keyOf = new Map<string, string>();
  const byKey = new Map<string, Device>();
  for (const line of lines) {
    if (line.kind === 'let in') {
      const { id, name, role, at } = line;
      keyOf.set(id, line.key_sha256);
      byKey.set(line.key_sha256, { id, name, role, since: at, seen: at });
      continue;
    }
    const key = keyOf.get(line.id);
    const device = key === undefined ? undefined : byKey.get(key);
    if (key === undefined || device === undefined) continue;
    if (line.kind === 'removed') byKey.delete(key);
    else byKey.set(key, { ...device, seen: line.at });
  }
  return byKey;
}
