import { z } from 'zod';
import { checked } from './refusal.ts';

/** What a device may do: look, or look and write. */
export const roles = ['reader', 'writer'] as const;
export type Role = (typeof roles)[number];

/** Names people give their devices; told to the shop, so short, and shown as text only. */
const deviceName = z.string().trim().min(1).max(60);

export const invitationSchema = z.strictObject({ role: z.enum(roles) });

/** @throws BadInput */
export const invitationAsked = (value: unknown): { readonly role: Role } => checked(invitationSchema, value);

export const joinSchema = z.strictObject({
  /** What the link holds, or the short code as it was typed. */
  code: z.string().min(1).max(100),
  name: deviceName,
});

/** @throws BadInput */
export const joinAsked = (value: unknown): { readonly code: string; readonly name: string } =>
  checked(joinSchema, value);

const id = z.string().regex(/^[0-9a-f]{16}$/);
const hash = z.string().regex(/^[0-9a-f]{64}$/);
const at = z.iso.datetime({ offset: true });

const lineSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('let in'),
    id,
    name: deviceName,
    role: z.enum(roles),
    key_sha256: hash,
    at,
  }),
  z.strictObject({ kind: z.literal('removed'), id: z.string(), at }),
  z.strictObject({ kind: z.literal('seen'), id: z.string(), at }),
  /** An invitation for one device until it ends; of its secret and its short code only their SHA-256 is kept. */
  z.strictObject({
    kind: z.literal('invited'),
    id,
    role: z.enum(roles),
    secret_sha256: hash,
    code_sha256: hash,
    ends: at,
    at,
  }),
  /** Taken up; where two took it up at once, the first line counts. `by`: who took it, a random mark. */
  z.strictObject({ kind: z.literal('taken'), id, by: id, at }),
  /** Somebody tried a code that is not known while an invitation was open. */
  z.strictObject({ kind: z.literal('guessed'), at }),
]);

/** One line of the list of devices and invitations: append-only, as the ledger is. */
export type DeviceLine = z.output<typeof lineSchema>;

/** @throws BadInput */
export const deviceLine = (value: unknown): DeviceLine => checked(lineSchema, value);
