import { z } from 'zod';
import type { MadeBlock } from '../core/parts/made-block.ts';
import type { SiteLimits } from '../core/site/part-error.ts';
import type { SiteInput } from '../core/site/site.ts';
import { madeBlockFaults, madeBlockShape } from './made-block.ts';
import { checked } from './refusal.ts';
import { loadSchema } from './rest.ts';
import { place, positive, slideSchema } from './slide.ts';

const along_mm = z.number().min(-1e5).max(1e5);
const height_um = z.number().min(-1e6).max(1e6);
const most = z.number().min(0).max(1e6);
/** What may be allowed, by what the machine shows. */
const limitKeys = { turned: 'diameter_um', block: 'parallel_um', slide: 'lean_urad' } as const;

/** `site`'s input, see docs/contract.md. */
export const siteSchema = z
  .strictObject({
    slide: slideSchema,
    bed: z.strictObject({
      stations_mm: z.array(along_mm).min(2).max(20000),
      ways: z.array(z.strictObject({ pad: z.string(), height_um: z.array(height_um) })).max(24),
    }),
    load: loadSchema,
    stiffness_N_per_mm3: positive,
    film_um: z.number().min(0),
    candidates_mm: z.array(along_mm).min(1).max(1000),
    positions_mm: z.array(along_mm).min(1).max(5000),
    duty: z.array(z.number().min(0).max(1e6)),
    tool_mm: place,
    facing_mm: z.number().positive().max(1e5).optional(),
    makes: madeBlockShape(place).optional(),
    shows: z.literal('slide').optional(),
    allow: z
      .union([
        z.strictObject({ diameter_um: most, facing_um: most }),
        z.strictObject({ parallel_um: most, square_urad: most }),
        z.strictObject({ lean_urad: most, plan_urad: most }),
      ])
      .optional(),
  })
  .superRefine((input, context) => {
    const refuse = (path: (string | number)[], found: unknown, expected: string) =>
      context.addIssue({ code: 'custom', path, input: found, message: expected });
    const shows = input.makes ? 'block' : (input.shows ?? 'turned');
    if (input.makes)
      for (const fault of madeBlockFaults(input.makes, input.slide.free))
        refuse(['makes', ...fault.path], fault.found, fault.expected);
    if (input.allow && !(limitKeys[shows] in input.allow))
      refuse(['allow'], Object.keys(input.allow).join(', '), `${limitKeys[shows]} and what goes with it`);
    const { stations_mm, ways } = input.bed;
    const back = stations_mm.findIndex((at, k) => k > 0 && at <= stations_mm[k - 1]!);
    if (back > 0)
      refuse(
        ['bed', 'stations_mm', back],
        stations_mm[back],
        `more than the one before (${stations_mm[back - 1]})`,
      );
    ways.forEach((way, k) => {
      if (way.height_um.length !== stations_mm.length)
        refuse(
          ['bed', 'ways', k, 'height_um'],
          way.height_um,
          `${stations_mm.length} heights, one for each station`,
        );
      if (!input.slide.pads.some((pad) => pad.name === way.pad))
        refuse(['bed', 'ways', k, 'pad'], way.pad, 'the name of a pad of the slide');
      if (ways.findIndex((other) => other.pad === way.pad) !== k)
        refuse(['bed', 'ways', k, 'pad'], way.pad, 'one way for each pad');
    });
    for (const pad of input.slide.pads)
      if (!ways.some((way) => way.pad === pad.name))
        refuse(
          ['bed', 'ways'],
          ways.map((way) => way.pad),
          `a way for "${pad.name}"`,
        );
    if (input.duty.length !== input.positions_mm.length)
      refuse(['duty'], input.duty, `${input.positions_mm.length} shares, one for each position`);
    if (!input.duty.some((share) => share > 0)) refuse(['duty'], input.duty, 'at least one share above 0');
    const travel = 'xyz'.indexOf(input.slide.free);
    const reach = input.slide.pads.map((pad) => {
      const half = (pad.length_mm / 2) * (1 - 1 / pad.zones);
      return [pad.centre_mm[travel]! - half, pad.centre_mm[travel]! + half] as const;
    });
    const first = stations_mm[0]! - Math.min(...reach.map(([low]) => low));
    const last = stations_mm.at(-1)! - Math.max(...reach.map(([, high]) => high));
    const within = (path: string, places: readonly number[]) =>
      places.forEach((at, k) => {
        if (at < first - 1e-6 || at > last + 1e-6)
          refuse([path, k], at, `${first} to ${last}, so that every zone stands on surveyed bed`);
      });
    within('candidates_mm', input.candidates_mm);
    within('positions_mm', input.positions_mm);
  });

/** What is asked, with the radius that faces are judged over and what parts may be out. */
export type SiteAsk = SiteInput & {
  readonly facing_mm?: number;
  /** The block that the machine makes; without it, and without `shows`, the machine turns. */
  readonly makes?: MadeBlock;
  /** Nothing is known of the machine's work: the slide itself is told of. */
  readonly shows?: 'slide';
  readonly allow?:
    | SiteLimits
    | { readonly parallel_um: number; readonly square_urad: number }
    | { readonly lean_urad: number; readonly plan_urad: number };
};

/**
 * `site`’s input as it came; see docs/contract.md.
 * @throws BadInput  naming every field that is wrong
 */
export const siteInput = (value: unknown): SiteAsk => checked(siteSchema, value) as SiteAsk;
