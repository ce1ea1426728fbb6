import { z } from 'zod';
import { measurePattern } from '../core/ledger/measure.ts';
import { finite, name, positive } from './slide.ts';

/** A size's name, as sums over sizes call it. */
export const sizeName = z.string().regex(/^[a-z][a-z0-9_]*$/, { error: 'small letters, figures and _' });

/** What a machine's file says to a person. */
export const fileWords = z.string().min(1).max(600);

/** A number of a machine's file, or a sum over its sizes. */
export const measure = z.union([
  finite,
  z.string().regex(measurePattern, { error: 'a number, or a sum over dimensions such as "across/2 + 14"' }),
]);

/** x, y and z, each a number or a sum, mm. */
export const measuredPlace = z.tuple([measure, measure, measure]);

/** A target of a slide in a machine's file, µm over a stretch. */
export const measuredTarget = {
  feature: name,
  low_um: measure,
  high_um: measure,
  aim_um: measure.optional(),
  over_mm: positive.optional(),
};
