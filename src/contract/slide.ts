import { z } from 'zod';

/** Past these a number is a slip of unit or of a finger, and sums over it would lose their figures. */
const most = {
  number: 1e12,
  positive: 1e9,
  least: 1e-9,
  place_mm: 1e5,
  pad_mm: 1e5,
  leastPad_mm: 1e-3,
} as const;

export const finite = z.number().min(-most.number).max(most.number);
const above = (top: number) => z.number().min(most.least).max(top);
export const positive = above(most.positive);
/** A doubt, µm or µrad: above 0, since a reading without doubt would outweigh everything. */
export const sd = above(1e6);
export const slopeSd_urad = z.number().min(0).max(1e6);
export const film_um = above(1e4);
/** A pass of less than a nanometre or more than ten millimetres is a slip of unit. */
export const pass_um = z.number().min(1e-3).max(1e4);

export const notNegative = z.number().min(0).max(most.number);
/** The slope of a face or a part; a radian is not a small displacement. */
export const slope_urad = z.number().min(-1e6).max(1e6);
/** Names are keys of records (print, scraped, passes): a word that every object answers to would be taken for an entry. */
export const name = z
  .string()
  .min(1)
  .max(200)
  .refine((text) => !(text in {}), {
    error: 'another name: every object of the program answers to this one',
  });
/** A cause names up to two of the things above, see core/estimate/cause-name.ts. */
export const causeText = z.string().min(1).max(500);
const part_mm = z.number().min(-most.place_mm).max(most.place_mm);
export const place = z.tuple([part_mm, part_mm, part_mm]);

const size_mm = z.number().min(most.leastPad_mm).max(most.pad_mm);

/** A direction: three numbers that are not all zero. */
export const direction = place.refine((v) => Math.hypot(...v) > 1e-9, {
  error: 'a direction (not all zero)',
});

export const padSchema = z.strictObject({
  name,
  centre_mm: place,
  normal: direction,
  length_mm: size_mm,
  width_mm: size_mm,
  zones: z.int().min(1).max(60),
  material: name,
  stock_um: notNegative.optional(),
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
