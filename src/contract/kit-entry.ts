import { z } from 'zod';
import type { KitDeed, KitEntry } from '../core/ledger/kit-ledger.ts';
import { entryId } from './entry.ts';
import { instrument, reference, referenceFits } from './kit.ts';
import { checked } from './refusal.ts';

/** An entry of the workshop's kit as it is sent. */
export type SentKitEntry = KitDeed & { readonly id: string; readonly at: string };

const thing = z.union([instrument, reference]).superRefine((one, context) => {
  if ('known' in one)
    referenceFits(one, [], (path, input, message) =>
      context.addIssue({ code: 'custom', path, input, message }),
    );
});

const schema = <S extends Record<string, z.ZodType>>(shape: S) =>
  z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('put'), item: entryId, thing, ...shape }),
    z.strictObject({ kind: z.literal('taken out'), item: entryId, ...shape }),
    z.strictObject({ kind: z.literal('undone'), entry: entryId, ...shape }),
  ]);

const sent = { id: entryId, at: z.iso.datetime({ offset: true }) };
export const sentKitSchema = schema(sent);
const storedSchema = schema({ ...sent, seq: z.int().min(1) });
export const kitFileSchema = z.strictObject({
  format: z.literal('waywright-kit'),
  version: z.literal(1),
  entries: z
    .array(storedSchema)
    .max(10_000)
    .superRefine((entries, context) => {
      const seen = new Set<string>();
      entries.forEach(({ id }, i) => {
        if (seen.has(id))
          context.addIssue({ code: 'custom', path: [i, 'id'], input: id, message: 'an id not used before' });
        seen.add(id);
      });
    }),
});

/** The kit as a file: its whole ledger, undone entries too. */
export interface KitFile {
  readonly format: 'waywright-kit';
  readonly version: 1;
  readonly entries: readonly KitEntry[];
}

/** @throws BadInput */
export const sentKitEntry = (value: unknown): SentKitEntry =>
  checked(sentKitSchema, value) as unknown as SentKitEntry;

/** @throws BadInput */
export const storedKitEntry = (value: unknown): KitEntry =>
  checked(storedSchema, value) as unknown as KitEntry;

/** @throws BadInput */
export const kitFile = (value: unknown): KitFile => checked(kitFileSchema, value) as unknown as KitFile;
