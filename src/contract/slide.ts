import { z } from 'zod';

export const finite = z.number();
export const positive = z.number().gt(0);
export const name = z.string().min(1).max(200);
/** A cause names up to two of the things above, see core/estimate/cause-name.ts. */
export const causeText = z.string().min(1).max(500);
export const place = z.tuple([finite, finite, finite]);

/** A direction: three numbers that are not all zero. */
export const direction = place.refine((v) => Math.hypot(...v) > 1e-9, {
  error: 'a direction (not all zero)',
});

export const padSchema = z.strictObject({
  name,
  centre_mm: place,
  normal: direction,
  length_mm: positive,
  width_mm: positive,
  zones: z.int().min(1).max(60),
  material: name,
  stock_um: z.number().min(0).optional(),
});

const unique = (names: readonly string[]): boolean => new Set(names).size === names.length;

export const slideSchema = z.strictObject({
  name,
  free: z.enum(['x', 'y', 'z']),
  pads: z
    .array(padSchema)
    .min(1)
    .max(24)
    .refine((pads) => unique(pads.map((pad) => pad.name)), { error: 'pads with different names' })
    .refine((pads) => pads.every((pad) => pad.name !== 'spot'), { error: 'no pad named "spot"' }),
});

/** Per pad and zone: one list a pad. Which pads and how many zones is checked where the slide is known. */
export const perPad = <T extends z.ZodType>(each: T) => z.record(z.string(), z.array(each));
