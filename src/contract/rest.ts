import { z } from 'zod';
import type { RestInput } from '../core/rest/rest.ts';
import { checked } from './refusal.ts';
import { direction, place, positive, slideSchema } from './slide.ts';

/** Gaps past a metre are a slip of unit. */
const gap_um = z.number().min(-1e6).max(1e6);

export const loadSchema = z.strictObject({ force_N: positive, at_mm: place, direction });

/** `rest`'s input, see docs/contract.md. */
const restSchema = z
  .strictObject({
    slide: slideSchema,
    gaps_um: z.array(z.array(gap_um)),
    load: loadSchema,
    stiffness_N_per_mm3: positive,
    film_um: z.number().min(0),
  })
  .superRefine((input, context) => {
    const { pads } = input.slide;
    if (input.gaps_um.length !== pads.length)
      context.addIssue({
        code: 'custom',
        path: ['gaps_um'],
        input: input.gaps_um,
        message: `a list for each of the ${pads.length} pads`,
      });
    input.gaps_um.forEach((gaps, k) => {
      const pad = pads[k];
      if (pad && gaps.length !== pad.zones)
        context.addIssue({
          code: 'custom',
          path: ['gaps_um', k],
          input: gaps,
          message: `${pad.zones} gaps, one for each zone of "${pad.name}"`,
        });
    });
  });

/** @throws BadInput */
export const restInput = (value: unknown): RestInput => checked(restSchema, value) as RestInput;
