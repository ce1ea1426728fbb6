import { z } from 'zod';
import type { AxisName } from '../core/body/vector.ts';
import type { MadeBlock } from '../core/parts/made-block.ts';
import { name } from './slide.ts';

const axis = z.enum(['x', 'y', 'z']);
const words = z.string().min(1).max(200);
const threeWords = z.strictObject({ x: words, y: words, z: words });

/** What a mill or grinder makes. A job holds places in mm; a machine's file may hold them as sums over its dimensions. */
export const madeBlockShape = <Place extends z.ZodType>(place: Place) =>
  z.strictObject({
    carriages: z
      .array(
        z.strictObject({
          name,
          along: axis,
          carries: z.enum(['work', 'tool']),
          is_slide: z.boolean().optional(),
        }),
      )
      .min(1)
      .max(3),
    size_mm: place,
    middle_mm: place,
    faces: z
      .array(z.strictObject({ face: z.enum(['+x', '-x', '+y', '-y', '+z', '-z']), name: words }))
      .min(1)
      .max(6),
    lengths: threeWords,
    plus: threeWords,
  });

export interface MadeBlockFault {
  readonly path: readonly (string | number)[];
  readonly found: unknown;
  readonly expected: string;
}

/** What a block's parts must say of each other and of the slide: one slide among the carriages, along its travel; faces that something sweeps. */
export function madeBlockFaults(
  made: Pick<MadeBlock, 'carriages' | 'faces'>,
  free: AxisName,
): MadeBlockFault[] {
  const { carriages, faces } = made;
  const faults: MadeBlockFault[] = [];
  const slides = carriages.filter((one) => one.is_slide);
  if (slides.length !== 1 || slides[0]!.along !== free)
    faults.push({
      path: ['carriages'],
      found: slides.map((one) => `${one.name} along ${one.along}`).join(', ') || 'none with "is_slide"',
      expected: `one carriage with "is_slide", along ${free} as the slide travels`,
    });
  carriages.forEach((one, k) => {
    if (carriages.findIndex((other) => other.along === one.along) !== k)
      faults.push({
        path: ['carriages', k, 'along'],
        found: one.along,
        expected: 'an axis that no other carriage travels along',
      });
  });
  faces.forEach(({ face }, k) => {
    if (faces.findIndex((other) => other.face === face) !== k)
      faults.push({ path: ['faces', k, 'face'], found: face, expected: 'a face that is not named already' });
    if (!carriages.some((one) => one.along !== face[1]))
      faults.push({ path: ['faces', k, 'face'], found: face, expected: 'a face that a carriage sweeps' });
  });
  return faults;
}
