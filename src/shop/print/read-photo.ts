import { cornersFit, type PrintAsk } from '../../contract/print.ts';
import { BadInput } from '../../contract/refusal.ts';
import { type Agreement, agreementOf } from '../../core/print/agreement.ts';
import { findCorners } from '../../core/print/find-corners.ts';
import { madeReady } from '../../core/print/made-ready.ts';
import type { Corners, Picture, SurfaceSize } from '../../core/print/picture.ts';
import { readPrint } from '../../core/print/read-print.ts';
import type { ContactMap } from '../../core/print/reading.ts';
import { readingDoubt } from '../../core/print/reading-doubt.ts';
import type { DecodedPhoto, DecodePhoto } from './photo.ts';
import type { CornersFound, PhotoReading, PhotoWarning } from './photo-reading.ts';
import { sidesSwapped } from './sides-swapped.ts';

/** Beyond this, as mm on the surface, squares no longer lie where they are drawn. */
const mostDoubt_mm = 1;

interface Placed {
  readonly corners: Corners;
  readonly found?: CornersFound;
}

/** The corners that are given, or those that are found. @throws BadInput */
function placed(picture: Picture, asked: PrintAsk): Placed {
  if (asked.corners) {
    cornersFit(asked.corners, picture);
    return { corners: asked.corners };
  }
  const seen = findCorners(picture, asked.size);
  if ('why' in seen)
    throw new BadInput([
      {
        path: 'corners',
        found: `none given, and none found (${seen.why})`,
        expected: 'four corners in pixels, in the order (0,0), (L,0), (L,W), (0,W)',
      },
    ]);
  return { corners: seen.corners, found: { how: seen.how, doubt_px: seen.doubt_px } };
}

function warningsOf(
  photo: DecodedPhoto,
  { corners, found }: Placed,
  size: SurfaceSize,
  px_per_mm: number,
): PhotoWarning[] {
  const warnings = sidesSwapped(corners, size);
  if (photo.damaged)
    warnings.push({
      code: 'damaged file',
      text: 'The photo’s file is faulty in places; what could be unpacked was read. Look at the photo, and send it again.',
    });
  if (found && found.doubt_px > mostDoubt_mm * px_per_mm)
    warnings.push({
      code: 'corners doubtful',
      text: `The corners were found within ${found.doubt_px.toFixed(0)} pixels only. Look at them and drag them where they belong.`,
    });
  return warnings;
}

/** A print read, and where there is contact, for drawing. */
export interface Looked {
  readonly reading: PhotoReading;
  readonly contact: ContactMap;
}

/** As `readPhoto`, with the map of contact beside it. */
export async function lookAtPhoto(bytes: Uint8Array, asked: PrintAsk, decode: DecodePhoto): Promise<Looked> {
  const decoded = decode(bytes);
  // The decoder works on a thread of its own; this one would only wait.
  madeReady();
  const photo = await decoded;
  const where = placed(photo.picture, asked);
  const { size, exclusions, zones, cell_mm = 25 } = asked;
  const { contact, ...reading } = readPrint({
    picture: photo.picture,
    corners: where.corners,
    size,
    cell_mm,
    ...(exclusions ? { exclusions } : {}),
    ...(zones === undefined ? {} : { zones }),
  });
  const warnings = [...warningsOf(photo, where, size, reading.trust.px_per_mm), ...reading.warnings];
  const { format, width_px, height_px } = photo;
  return {
    contact,
    reading: {
      ...reading,
      photo: { format, width_px, height_px },
      corners: where.corners,
      ...(where.found ? { corners_found: where.found } : {}),
      size,
      cell_mm,
      doubt: readingDoubt({ ...reading, warnings }),
      warnings,
    },
  };
}

/**
 * A print read from a photo's bytes.
 *
 * @param asked    corners in the photo as it is shown, turned the way EXIF says; left out, they are looked for
 * @throws BadInput  the photo cannot be taken, or corners lie outside it, or none are given and none are found
 */
export const readPhoto = async (
  bytes: Uint8Array,
  asked: PrintAsk,
  decode: DecodePhoto,
): Promise<PhotoReading> => (await lookAtPhoto(bytes, asked, decode)).reading;

/**
 * A second photo of the same print, held against the first.
 * @param corners  in the second photo; left out, they are looked for
 * @throws BadInput  as `readPhoto`
 */
export async function secondPhoto(
  first: PhotoReading,
  bytes: Uint8Array,
  asked: PrintAsk,
  decode: DecodePhoto,
): Promise<{ readonly reading: PhotoReading; readonly agreement: Agreement }> {
  const reading = await readPhoto(bytes, asked, decode);
  return { reading, agreement: agreementOf(first, reading) };
}
