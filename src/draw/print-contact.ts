/** Classes of a contact map, as the reader gives them. */
const bare = 0;
const contact = 1;
const burnished = 2;
const excluded = 3;
const unreadable = 4;

/** Red, green, blue, opacity; the light theme's, as all that is drawn over a photo. */
const blue = [19, 74, 158, 190] as const;
const sheet = [252, 253, 250, 255] as const;
const ink = [18, 32, 42, 255] as const;
const clear = [0, 0, 0, 0] as const;

/**
 * A contact map as a picture to lay over the photo: blue where it bears; burnished contact is hatched white and ink; what is cut out
 * is crossed by thin ink strokes, what glare hides by dots. Told apart without colour.
 *
 * @param is      classes row by row: 0 bare, 1 contact, 2 burnished, 3 excluded, 4 unreadable
 * @param stroke  breadth of a hatching stroke, elements
 * @returns       RGBA, 4 · width · height bytes
 */
export function contactPicture(
  is: ArrayLike<number>,
  width: number,
  height: number,
  stroke: number,
): Uint8ClampedArray<ArrayBuffer> {
  const rgba = new Uint8ClampedArray(4 * width * height);
  const period = 3 * stroke;
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0; x < width; x++, at++) rgba.set(colourOf(is[at] ?? bare, x, y, stroke, period), 4 * at);
  return rgba;
}

function colourOf(kind: number, x: number, y: number, stroke: number, period: number): readonly number[] {
  switch (kind) {
    case contact:
      return blue;
    case burnished:
      return (x + y) % period < stroke ? ink : sheet;
    case excluded:
      return (x - y + 300_000 * period) % (3 * period) < stroke ? ink : clear;
    case unreadable:
      return x % period < stroke && y % period < stroke ? ink : [252, 253, 250, 150];
    default:
      return clear;
  }
}
