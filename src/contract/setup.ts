import { z } from 'zod';
import { direction, name, sd, slope_urad, slopeSd_urad } from './slide.ts';

const side = z.enum(['slide', 'reference']);

/**
 * The kinds of set-up, each with what it measures with. A job holds places in mm; a machine's file may hold them as sums over
 * its dimensions, and asks more of a card's words.
 */
export const setupKinds = <Place extends z.ZodType, Card extends z.ZodRawShape>(place: Place, card: Card) =>
  z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('sweep'),
      ...card,
      rides: side,
      touches: side,
      plunger: direction,
      from_mm: place,
      to_mm: place,
      points: z.int().min(2).max(200),
      reading_sd_um: sd,
      face: name,
      face_slope_urad: slope_urad,
      face_slope_sd_urad: slopeSd_urad,
      bar: z.literal(true).optional(),
    }),
    z.strictObject({ kind: z.literal('level'), ...card, along: direction, sd_urad: sd }),
    z.strictObject({ kind: z.literal('height'), ...card, at_mm: place, direction, sd_um: sd }),
  ]);
