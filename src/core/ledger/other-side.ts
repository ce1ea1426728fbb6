import { scale, unit, type Vector } from '../body/vector.ts';
import type { SetupRecord } from './entry.ts';
import type { PlaceWords, SweepSetup } from './setup.ts';

const toward = (end: string): string => (end.startsWith('your') ? `toward ${end}` : `toward the ${end}`);

/** Which way a direction of the slide's frame goes, in the words of the machine: "toward the headstock end", "down". */
function wayWords(direction: Vector, places: PlaceWords): string {
  const travel = 'xyz'.indexOf(places.travel);
  const across = travel === 1 ? 0 : 1;
  const k = [0, 1, 2].reduce(
    (most, i) => (Math.abs(direction[i]!) > Math.abs(direction[most]!) ? i : most),
    0,
  );
  const isPlus = direction[k]! > 0;
  if (k === travel) return toward(isPlus ? places.plus_end : places.minus_end);
  if (k === across) return toward(isPlus ? places.plus_side : places.minus_side);
  return isPlus ? 'up' : 'down';
}

/**
 * A set-up swept from its other side: the indicator stands across from where the card has it and touches the opposite face, so
 * its plunger points the other way and a climbing number means what a falling one meant.
 *
 * The opposite face is another face: its own slope is not that of the first, so nothing known of the first is counted for it,
 * and what rounds learn of the one is not taken for the other.
 */
export const fromOtherSide = (setup: SweepSetup, places: PlaceWords): SweepSetup => {
  const plunger = scale(setup.plunger, -1);
  return {
    ...setup,
    plunger,
    touches_words: `the face opposite to the card’s. The card’s: ${setup.touches_words}`,
    plus_words: `plunger in. It points ${wayWords(unit(plunger), places)}.`,
    climbs_words: setup.falls_words,
    falls_words: setup.climbs_words,
    face: `${setup.face}, opposite face`,
    face_slope_urad: 0,
  };
};

/** The set-up as it was really made. */
export const asMade = (
  setup: SweepSetup,
  record: Pick<SetupRecord, 'other_side'>,
  places: PlaceWords,
): SweepSetup => (record.other_side ? fromOtherSide(setup, places) : setup);
