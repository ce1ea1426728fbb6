/** A stretch of the drawing, px: from, to. */
export type Stretch = readonly [number, number];

const meets = (a: Stretch, b: Stretch): boolean => a[0] < b[1] && b[0] < a[1];

/** The first of the offered left edges where words of a width lie within the room and meet nothing that is already there. */
export const freePlace = (
  offered: readonly number[],
  width: number,
  room: Stretch,
  taken: readonly Stretch[],
): number | undefined =>
  offered.find(
    (at) =>
      at >= room[0] && at + width <= room[1] && !taken.some((stretch) => meets([at, at + width], stretch)),
  );

/** As {@link freePlace}; failing all, the first one moved into the room. */
export const clearPlace = (
  offered: readonly number[],
  width: number,
  room: Stretch,
  taken: readonly Stretch[],
): number =>
  freePlace(offered, width, room, taken) ??
  Math.min(Math.max(offered[0]!, room[0]), Math.max(room[1] - width, room[0]));
