import { z } from 'zod';
import { entryId } from './entry.ts';
import { checked } from './refusal.ts';
import { answersSchema } from './template.ts';

/** What a new job is asked for: a template's name and the user's own dimensions. */
export interface NewJob {
  readonly id: string;
  readonly at: string;
  readonly template: string;
  readonly title: string;
  readonly dimensions: Readonly<Record<string, number | string>>;
}

export const newJobSchema = z.strictObject({
  id: entryId,
  at: z.iso.datetime({ offset: true }),
  template: z.string().min(1).max(100),
  title: z.string().trim().min(1).max(200),
  dimensions: answersSchema,
});

/** @throws BadInput */
export const newJob = (value: unknown): NewJob => checked(newJobSchema, value);
