import { z } from 'zod';
import type { Print } from '../core/observe/round.ts';
import type { RestInput } from '../core/rest/rest.ts';
import { checked } from './refusal.ts';
import { direction, perPad, place, positive, slideSchema } from './slide.ts';

/** Gaps past a metre are a slip of unit. */
const gap_um = z.number().min(-1e6).max(1e6);

export const loadSchema = z.strictObject({ force_N: positive, at_mm: place, direction });

/** `rest`'s input, see docs/contract.md. */
export const restSchema = z
  .strictObject({
    slide: slideSchema,
    gaps_um: z.array(z.array(gap_um)),
    load: loadSchema,
    stiffness_N_per_mm3: positive,
    film_um: z.number().min(0),
    roughness_um: z.number().min(1e-3).max(1e3).optional(),
    print: perPad(z.number().min(0).max(1)).optional(),
    print_sd: z.number().min(1e-3).max(1).optional(),
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
    for (const [name, shares] of Object.entries(input.print ?? {})) {
      const pad = pads.find((one) => one.name === name);
      const refuse = (found: unknown, message: string) =>
        context.addIssue({ code: 'custom', path: ['print', name], input: found, message });
      if (!pad) refuse(name, 'the name of a pad of the slide');
      else if (shares.length !== pad.zones)
        refuse(shares, `${pad.zones} shares, one for each zone of "${name}"`);
    }
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

/** What is asked, with the faces' roughness, and the print that was seen. */
export type RestAsk = RestInput & {
  /** Sd of the surface's height within a zone, µm. */
  readonly roughness_um?: number;
  /** Share of each zone that came up blue, 0 to 1, by pad. */
  readonly print?: Print;
  /** How well those shares are read, one sd. */
  readonly print_sd?: number;
};

/**
 * `rest`’s input as it came; see docs/contract.md.
 * @throws BadInput  naming every field that is wrong
 */
export const restInput = (value: unknown): RestAsk => checked(restSchema, value) as RestAsk;
