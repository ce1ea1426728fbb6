import type { Pad } from '../../core/body/pad.ts';
import type { RoundRecord, TakenPhoto } from '../../core/ledger/round-record.ts';
import { bearsFromBlue } from '../../core/print/cover.ts';
import type { PrintDraft, ZoneBlue } from '../measure/blue.ts';

type Pads = readonly Pick<Pad, 'name' | 'zones'>[];
type PhotoRecord = Pick<RoundRecord, 'photos' | 'print'>;

/** How far each zone bears by the photos of a round, the last that could tell; undefined where none could. */
export function photoShares(
  photos: readonly TakenPhoto[],
  pad: Pick<Pad, 'name' | 'zones'>,
): (number | undefined)[] {
  const of = photos.filter((photo) => photo.pad === pad.name);
  return Array.from({ length: pad.zones }, (_, z) => {
    const blue = of.findLast((photo) => photo.shares[z] != null)?.shares[z];
    return blue == null ? undefined : bearsFromBlue(blue);
  });
}

/** Zones whose share still is the one that a photo gave: nothing was tapped over it since. */
export function fromPhoto({ photos, print }: PhotoRecord, pad: Pick<Pad, 'name' | 'zones'>): boolean[] {
  const known = print?.share[pad.name];
  return photoShares(photos, pad).map(
    (share, z) => share !== undefined && (known === undefined || known[z] === share),
  );
}

/**
 * What stands in a print's zones before anything is tapped: in a round with photos what it holds already, so that only what the
 * photos cannot tell is left to say; otherwise nothing.
 */
export function printBefore(record: PhotoRecord, pads: Pads): PrintDraft {
  const { photos, print } = record;
  if (photos.length === 0) return {};
  return Object.fromEntries(
    pads.map((pad) => {
      const seen = photoShares(photos, pad);
      const words = print?.tapped[pad.name];
      const shares = print?.share[pad.name];
      return [
        pad.name,
        seen.map((share, z): ZoneBlue | undefined => {
          const word = words?.[z];
          if (word !== undefined) return { word };
          const known = shares?.[z] ?? share;
          return known === undefined ? undefined : { share: known };
        }),
      ];
    }),
  );
}

/** The print as it stands with what is tapped now laid over it. */
export const laidOver = (before: PrintDraft, tapped: PrintDraft, pads: Pads): PrintDraft =>
  Object.fromEntries(
    pads.map((pad) => [
      pad.name,
      Array.from({ length: pad.zones }, (_, z) => tapped[pad.name]?.[z] ?? before[pad.name]?.[z]),
    ]),
  );

/** Pads on which anything is tapped now. */
export const tappedPads = (tapped: PrintDraft, pads: Pads): string[] =>
  pads.filter((pad) => tapped[pad.name]?.some(Boolean)).map((pad) => pad.name);
