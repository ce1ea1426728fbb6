import { z } from 'zod';
import type { Exclusion } from '../core/print/exclusion.ts';
import type { Corners, PlacePx, SurfaceSize } from '../core/print/picture.ts';
import { clean, size_um } from '../core/quantity/unit.ts';
import { BadInput, checked, type Issue, quoted } from './refusal.ts';

/** What is asked of a photo; the photo itself comes as bytes. */
export interface PrintAsk {
  /** Left out, they are looked for: the surface that stands out, or the corner card. */
  readonly corners?: Corners;
  readonly size: SurfaceSize;
  readonly exclusions?: readonly Exclusion[];
  readonly cell_mm?: number;
  readonly zones?: number;
}

/** Sides of the squares that are counted in, mm: 25, or an inch. */
export const cellSides_mm = [25, 25.4] as const;

const least_mm = 5;
const most_mm = 3000;
/** A photo shows no more of a surface than this at a pitch that tells spots apart. */
const most_mm2 = 250_000;

const cornersExpected =
  'four corners as "x,y x,y x,y x,y" in pixels, in the order (0,0), (L,0), (L,W), (0,W)';
const sizeExpected = 'length and width in mm, as "400x80", or in inches, as "16x3in"';

const px = z.number().min(-1e5).max(1e5);
const placePx = z.strictObject({ x: px, y: px });
export const cornersSchema = z
  .array(placePx)
  .length(4, 'four corners, in the order (0,0), (L,0), (L,W), (0,W)')
  .superRefine((corners, context) => {
    const why = cornersWrong(corners);
    if (why) context.addIssue({ code: 'custom', input: corners, message: why });
  });

const side = z.number().min(least_mm).max(most_mm);
/** As it is kept; how much one photo may show is asked only of what is to be read. */
export const surfaceSchema = z.strictObject({ length_mm: side, width_mm: side });
const askedSurface = surfaceSchema.refine(({ length_mm, width_mm }) => length_mm * width_mm <= most_mm2, {
  error: `at most ${most_mm2} mm² in one photo; take a longer surface in parts`,
});

const mm = z
  .number()
  .min(-most_mm)
  .max(2 * most_mm);
const placeMm = z.strictObject({ x: mm, y: mm });
const pairMm = z.tuple([mm, mm]).transform(([x, y]) => ({ x, y }));
const width = z.number().gt(0).max(most_mm);

const exclusionsOf = <P extends z.ZodType>(point: P) =>
  z
    .array(
      z.discriminatedUnion(
        'type',
        [
          z.strictObject({ type: z.literal('circle'), x: mm, y: mm, r: width }),
          z.strictObject({ type: z.literal('polyline'), width, points: z.array(point).min(2).max(500) }),
          z.strictObject({ type: z.literal('polygon'), points: z.array(point).min(3).max(500) }),
        ],
        {
          error: (issue) =>
            issue.code === 'invalid_union' ? '"circle" or "polyline" or "polygon"' : undefined,
        },
      ),
    )
    .max(500);

/** As they are kept: points as {x, y}. */
export const exclusionsSchema = exclusionsOf(placeMm);
/** As they may be written: points as [x, y] too. */
const writtenExclusions = exclusionsOf(z.union([placeMm, pairMm]));

const maskSchema = z.strictObject({ exclusions: writtenExclusions });

export const printSchema = z.strictObject({
  corners: cornersSchema.optional(),
  size: askedSurface,
  exclusions: writtenExclusions.optional(),
  cell_mm: z.literal([...cellSides_mm]).optional(),
  zones: z.int().min(1).max(60).optional(),
});

/** Twice the signed area at each corner: all of one sign where the corners go round without a dent or a crossing. */
function turns(corners: readonly PlacePx[]): number[] {
  return corners.map((at, k) => {
    const next = corners[(k + 1) % 4]!;
    const after = corners[(k + 2) % 4]!;
    return (next.x - at.x) * (after.y - next.y) - (next.y - at.y) * (after.x - next.x);
  });
}

/** Sides shorter than this show nothing. */
const leastSide_px = 16;

/** What keeps these from being the corners of a face, or nothing. */
function cornersWrong(corners: readonly PlacePx[]): string | undefined {
  if (corners.length !== 4) return undefined;
  const shortest = Math.min(
    ...corners.map((at, k) => Math.hypot(at.x - corners[(k + 1) % 4]!.x, at.y - corners[(k + 1) % 4]!.y)),
  );
  if (shortest < leastSide_px) return `four corners at least ${leastSide_px} pixels apart`;
  // A corner whose sides run on nearly straight gives no projection: its sine is at least 1/50.
  const bent = turns(corners).map((turn, k) => {
    const [a, b, c] = [corners[k]!, corners[(k + 1) % 4]!, corners[(k + 2) % 4]!];
    return turn / (Math.hypot(b.x - a.x, b.y - a.y) * Math.hypot(c.x - b.x, c.y - b.y));
  });
  const left = bent.filter((sine) => sine < -0.02).length;
  const right = bent.filter((sine) => sine > 0.02).length;
  if (left === 4 || right === 4) return undefined;
  if (left === 2 && right === 2)
    return 'corners in the order (0,0), (L,0), (L,W), (0,W), round the face: these cross over';
  return 'corners of a face seen from above: these have a dent, or three on one line';
}

/** `"569,228 1626,113 1767,670 572,808"` → places. */
function cornersFrom(text: string): PlacePx[] {
  const words = text.trim().split(/\s+/);
  const corners = words.map((word) => {
    const parts = word.split(',');
    const [x, y] = parts.map((part) => (part === '' ? Number.NaN : Number(part)));
    return parts.length === 2 && Number.isFinite(x) && Number.isFinite(y) ? { x: x!, y: y! } : undefined;
  });
  const bad = corners.indexOf(undefined);
  if (corners.length !== 4 || bad >= 0) {
    const found =
      corners.length !== 4 ? `${text.trim() === '' ? 0 : corners.length} corners` : quoted(words[bad]);
    const path = corners.length !== 4 ? 'corners' : `corners[${bad}]`;
    throw new BadInput([{ path, found, expected: cornersExpected }]);
  }
  return corners as PlacePx[];
}

/** `"400x80"` → mm; `"16x3in"` too; × and spaces are understood. The unit behind stands for both. */
function sizeFrom(text: string): SurfaceSize {
  const found = /^\s*(\d+(?:\.\d+)?|\.\d+)\s*(mm|in)?\s*[x×X*]\s*(\d+(?:\.\d+)?|\.\d+)\s*(mm|in)?\s*$/.exec(
    text,
  );
  const [, long, first, broad, second] = found ?? [];
  if (!found || (first !== undefined && first !== (second ?? 'mm')))
    throw new BadInput([{ path: 'size', found: quoted(text), expected: sizeExpected }]);
  const unit = size_um[second === 'in' ? 'in' : 'mm'] / size_um.mm;
  return { length_mm: clean(Number(long) * unit), width_mm: clean(Number(broad) * unit) };
}

/**
 * What is asked of a photo: corners and size as text, the way the command line has them, or as places and numbers.
 * @throws BadInput
 */
export function printAsk(value: unknown): PrintAsk {
  if (value === null || typeof value !== 'object' || Array.isArray(value))
    return checked(printSchema, value) as unknown as PrintAsk;
  const asked: Record<string, unknown> = { ...value };
  if (typeof asked.corners === 'string') asked.corners = cornersFrom(asked.corners);
  if (typeof asked.size === 'string') asked.size = sizeFrom(asked.size);
  return checked(printSchema, asked) as unknown as PrintAsk;
}

/** What is asked when corners are looked for: the size alone. @throws BadInput */
export function cornersAsk(value: unknown): { readonly size: SurfaceSize } {
  const asked = printAsk(value);
  const more = Object.keys(asked).filter((key) => key !== 'size');
  if (more.length === 0) return { size: asked.size };
  throw new BadInput(
    more.map(
      (path): Issue => ({ path, found: 'a key that is not known here', expected: 'it to be left out' }),
    ),
  );
}

/** A mask file, {exclusions}. @throws BadInput */
export const maskFile = (value: unknown): readonly Exclusion[] => checked(maskSchema, value).exclusions;

/** How far outside the photo a corner may lie, as a share of the photo's longer side: a surface may be cut by the frame. */
const beyond = 0.25;

/**
 * Holds corners to the photo they are to lie in.
 * @throws BadInput
 */
export function cornersFit(
  corners: Corners,
  photo: { readonly width_px: number; readonly height_px: number },
): void {
  const { width_px, height_px } = photo;
  const most = beyond * Math.max(width_px, height_px);
  const issues = corners.flatMap(({ x, y }, k): Issue[] => {
    const out = Math.max(-x, -y, x - width_px, y - height_px);
    if (out <= most) return [];
    const expected = `a place in or near the photo of ${width_px} × ${height_px} pixels (the photo is turned as EXIF says first)`;
    return [{ path: `corners[${k}]`, found: `${x},${y}`, expected }];
  });
  if (issues.length) throw new BadInput(issues);
}
