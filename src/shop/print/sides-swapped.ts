import type { Corners, SurfaceSize } from '../../core/print/picture.ts';
import type { PhotoWarning } from './photo-reading.ts';

/** A face nearer to square than this is not judged: tilt alone changes its look by as much. */
const leastRatio = 1.5;

const between = (corners: Corners, a: number, b: number): number =>
  Math.hypot(corners[a]!.x - corners[b]!.x, corners[a]!.y - corners[b]!.y);

/**
 * A warning where the corners make the longer side of the surface the shorter one in the photo: the first side was not
 * marked along the length, or length and width are the wrong way round.
 */
export function sidesSwapped(corners: Corners, { length_mm, width_mm }: SurfaceSize): PhotoWarning[] {
  const said = length_mm / width_mm;
  const seen =
    (between(corners, 0, 1) + between(corners, 2, 3)) / (between(corners, 1, 2) + between(corners, 3, 0));
  const long = Math.max(said, 1 / said);
  if (long < leastRatio || said > 1 === seen > 1) return [];
  return [
    {
      code: 'sides swapped',
      text: `In the photo the side from the first corner to the second is ${said > 1 ? 'the short' : 'the long'} one, but the length is ${length_mm} mm and the width ${width_mm} mm. Begin at another corner, or swap length and width.`,
    },
  ];
}
