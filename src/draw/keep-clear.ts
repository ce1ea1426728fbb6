/** A stretch of the drawing, px: from, to. */
export type Stretch = readonly [number, number];

const meets = (a: Stretch, b: Stretch): boolean => a[0] < b[1] && b[0] < a[1];

/**
 * Where words of a given width may stand: the first of the offered left edges that lies within the room and meets nothing that is
 * already there; failing all, the first one moved into the room.
 */
export function clearPlace(
  offered: readonly number[],
  width: number,
  room: Stretch,
  taken: readonly Stretch[],
): number {
  const fits = offered.find(
    (at) =>
      at >= room[0] && at + width <= room[1] && !taken.some((stretch) => meets([at, at + width], stretch)),
  );
  return fits ?? Math.min(Math.max(offered[0]!, room[0]), Math.max(room[1] - width, room[0]));
}
