import { z } from 'zod';
import { mostSeed, type PracticeRecord, practiceLevels, slipKinds } from '../core/practice/record.ts';
import { practiceMaterials, practiceSlides } from '../core/practice/slides.ts';
import { checked } from './refusal.ts';

/** Names are held to what there is, so that an entry of a machine nobody can make is refused when it is written. */
export const practiceShape = {
  slide: z.enum(Object.keys(practiceSlides) as [string, ...string[]]),
  material: z.enum(practiceMaterials as unknown as ['liner', 'iron']),
  level: z.enum(practiceLevels),
  seed: z.int().min(0).max(mostSeed),
  slips: z.array(z.enum([...slipKinds, 'surprise'])).max(6),
};

/** What a new practice machine is asked for. */
export interface NewPractice extends PracticeRecord {
  readonly id: string;
  readonly at: string;
  readonly title: string;
}

export const newPracticeSchema = z.strictObject({
  id: z.string().regex(/^[A-Za-z0-9_-]{1,64}$/, 'letters, figures, - and _, at most 64'),
  at: z.iso.datetime({ offset: true }),
  title: z.string().trim().min(1).max(200),
  ...practiceShape,
});

/** @throws BadInput */
export const newPractice = (value: unknown): NewPractice => checked(newPracticeSchema, value);

/** Which round of a practice machine is read; `repeat` above 0 seats it and reads it again. */
export interface PracticeTurn {
  readonly round: number;
  readonly repeat?: number | undefined;
}

export const practiceTurnSchema = z.strictObject({
  round: z.int().min(1).max(500),
  repeat: z.int().min(0).max(99).optional(),
});

/** @throws BadInput */
export const practiceTurn = (value: unknown): PracticeTurn => checked(practiceTurnSchema, value);
