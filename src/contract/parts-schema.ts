import { z } from 'zod';
import { siteSchema } from './site.ts';
import { finite, name, place, slope_urad } from './slide.ts';

const along_mm = z.number().min(-1e5).max(1e5);
const size_mm = z.number().min(1e-3).max(1e5);
const sd = z.number().min(0).max(1e6);
const moved = z.number().min(-1e6).max(1e6);
const three = z.tuple([moved, moved, moved]);
const threeSds = z.tuple([sd, sd, sd]);
const doubted = z.strictObject({ value: slope_urad, sd: sd.optional() });
const matrix = z.array(z.array(finite).max(600)).max(600);

/** Poses along one travel, as they are written: shifts and turns apart, so that each key has its unit. */
const posesShape = {
  stations_mm: z.array(along_mm).min(2).max(2000),
  shift_um: z.array(three).optional(),
  turn_urad: z.array(three).optional(),
  shift_sd_um: z.array(threeSds).optional(),
  turn_sd_urad: z.array(threeSds).optional(),
  common_covariance: matrix.optional(),
  covariance: matrix.optional(),
};
const posesSchema = z.strictObject(posesShape);

const onBedSchema = z.strictObject({
  site: siteSchema,
  printed_mm: along_mm,
  height_sd_um: sd.optional(),
});

const latheSchema = z.strictObject({
  travel: posesSchema.optional(),
  on_bed: onBedSchema.optional(),
  tool_mm: place.optional(),
  side: z.enum(['front', 'rear']).optional(),
  spindle: z.strictObject({ across_urad: doubted.optional(), up_urad: doubted.optional() }).optional(),
  cross: posesSchema.optional(),
  square_urad: doubted.optional(),
  turned: z
    .array(
      z.strictObject({
        name,
        radius_mm: size_mm,
        from_mm: along_mm,
        to_mm: along_mm,
        tool_high_mm: z.number().min(-1e4).max(1e4).optional(),
      }),
    )
    .max(100)
    .optional(),
  faced: z
    .array(
      z.strictObject({
        name,
        at_mm: along_mm,
        rim_mm: size_mm,
        inner_mm: z.number().min(0).max(1e5).optional(),
        beside: z.string().optional(),
      }),
    )
    .max(100)
    .optional(),
});

const millSchema = z.strictObject({
  carriages: z
    .array(
      z.strictObject({
        name,
        along: z.enum(['x', 'y', 'z']),
        carries: z.enum(['work', 'tool']),
        reference_mm: place,
        ...posesShape,
      }),
    )
    .min(1)
    .max(3),
  tool_mm: place,
  blocks: z
    .array(
      z.strictObject({
        name,
        middle_mm: place,
        size_mm: z.tuple([size_mm, size_mm, size_mm]),
        faces: z
          .array(z.enum(['+x', '-x', '+y', '-y', '+z', '-z']))
          .min(1)
          .max(6),
      }),
    )
    .min(1)
    .max(50),
});

const wearSchema = z.strictObject({
  per: z.enum(['1000 h', 'year']),
  features: z
    .array(
      z.strictObject({
        name,
        unit: z.enum(['um', 'urad']),
        value: moved,
        sd,
        low: moved,
        high: moved,
        rate: moved,
        rate_sd: sd.optional(),
        hit_sd: sd.optional(),
      }),
    )
    .min(1)
    .max(100),
});

/** `parts`' input, see docs/contract.md. */
export const partsSchema = z.strictObject({
  lathe: latheSchema.optional(),
  mill: millSchema.optional(),
  wear: wearSchema.optional(),
});

export type WrittenPoses = z.output<typeof posesSchema>;
export type WrittenParts = z.output<typeof partsSchema>;
