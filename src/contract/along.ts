import { z } from 'zod';
import type { AlongInput } from '../core/survey/along.ts';
import { BadInput, checked, type Issue } from './refusal.ts';
import { positive } from './slide.ts';

const reading = z.number().min(-1e6).max(1e6);
const readings = z.array(reading).min(2).max(2000);
const sd = z.number().min(0).max(1e6);
const common = {
  name: z.string().min(1).max(200).optional(),
  stations_mm: z.array(z.number().min(-1e5).max(1e5)).min(2).max(2000),
};

export const alongSchemas = {
  twist: z.strictObject({
    kind: z.literal('twist'),
    ...common,
    tilts_urad: readings,
    return_urad: readings.optional(),
    bridge_mm: z.number().min(1).max(1e5).optional(),
    reading_sd_urad: sd.optional(),
    repeatability_sd_urad: sd.optional(),
    limit_urad: positive.optional(),
  }),
  parallel: z.strictObject({
    kind: z.literal('parallel'),
    ...common,
    heights_um: readings,
    other_um: readings.optional(),
    return_um: readings.optional(),
    reading_sd_um: sd.optional(),
    repeatability_sd_um: sd.optional(),
    limit_um: positive.optional(),
  }),
} as const;

/** Whether a value asks for twist or parallelism, not for straightness. */
export const isAlong = (value: unknown): boolean =>
  typeof value === 'object' &&
  value !== null &&
  'kind' in value &&
  (value.kind === 'twist' || value.kind === 'parallel');

/**
 * `line`’s input where two ways are compared, as it came: twist or parallelism; see docs/contract.md.
 * @throws BadInput  naming every field that is wrong
 */
export function alongInput(value: unknown): AlongInput {
  const { kind } = checked(z.looseObject({ kind: z.enum(['twist', 'parallel']) }), value);
  const input = checked(alongSchemas[kind], value) as AlongInput;
  const many = input.stations_mm.length;
  const lists =
    input.kind === 'twist'
      ? { tilts_urad: input.tilts_urad, return_urad: input.return_urad }
      : { heights_um: input.heights_um, other_um: input.other_um, return_um: input.return_um };
  const issues = Object.entries(lists).flatMap(([path, list]): Issue[] =>
    list && list.length !== many
      ? [{ path, found: `a list of ${list.length}`, expected: `${many}, one for each station` }]
      : [],
  );
  const fallen = input.stations_mm.findIndex((at, i) => i > 0 && at <= input.stations_mm[i - 1]!);
  if (fallen > 0)
    issues.push({
      path: `stations_mm[${fallen}]`,
      found: `${input.stations_mm[fallen]} after ${input.stations_mm[fallen - 1]}`,
      expected: 'stations in rising order, each once',
    });
  if (issues.length) throw new BadInput(issues);
  return input;
}
