import { useQuery } from '@tanstack/react-query';
import type { Role } from '../../../contract/share.ts';
import type { Device } from '../../../shop/share/devices.ts';
import { fetched } from '../keep/server.ts';

/** What this device is told of sharing: all of it at the machine itself, its own place elsewhere. */
export type Sharing =
  | { readonly you: { readonly is: 'nobody' } }
  | {
      readonly you: { readonly is: 'device'; readonly name: string; readonly role: Role };
      readonly secure: boolean;
    }
  | {
      readonly you: { readonly is: 'owner' };
      readonly secure: boolean;
      readonly addresses: readonly string[];
      readonly devices: readonly Device[];
    };

/** An invitation as the owner's page shows it. */
export interface Invited {
  readonly code: string;
  readonly role: Role;
  readonly ends: string;
  readonly links: readonly {
    readonly link: string;
    readonly address: string;
    readonly qr: { readonly size: number; readonly path: string };
  }[];
}

const lookAgain_ms = 3_000;

/** Looked at again while it is open: a phone comes in elsewhere. */
export const useSharing = () =>
  useQuery({
    queryKey: ['share'],
    queryFn: () => fetched<Sharing>('/api/share'),
    refetchInterval: lookAgain_ms,
  });

export const roleWords: Record<Role, string> = { reader: 'may look', writer: 'may look and write' };
