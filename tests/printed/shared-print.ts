import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Exclusion } from '../../src/core/print/exclusion.ts';
import type { Corners } from '../../src/core/print/picture.ts';
import { pictureIn } from './jpeg.ts';
import type { Difficulty } from './presets.ts';
import type { PrintedPicture } from './printed-picture.ts';

/** A tuning picture's file: `input` is for the reader, `truth` for the scorer alone. */
interface SharedFile {
  readonly difficulty: Difficulty;
  readonly input: {
    readonly image: string;
    readonly length_mm: number;
    readonly width_mm: number;
    readonly corners_px: readonly Pair[];
    readonly exclusions: readonly WrittenExclusion[];
  };
  readonly truth: {
    readonly net_area_mm2: number;
    readonly bearing_pct: number;
    readonly glare_pct: number;
    readonly spots: readonly { x: number; y: number; area: number }[];
    readonly cells: readonly {
      col: number;
      row: number;
      count: number;
      bearing_pct: number;
      net_mm2: number;
      partial: boolean;
    }[];
  };
}

/** As in the files: points are pairs. */
type WrittenExclusion =
  | { readonly type: 'circle'; readonly x: number; readonly y: number; readonly r: number }
  | { readonly type: 'polyline'; readonly width: number; readonly points: readonly Pair[] }
  | { readonly type: 'polygon'; readonly points: readonly Pair[] };
type Pair = readonly [number, number];

export interface SharedPrint extends PrintedPicture {
  readonly name: string;
  readonly difficulty: Difficulty;
}

/** Where the tuning pictures lie: WAYWRIGHT_PRINTS, or ../shared/prints beside the repository; undefined where there are none. */
export function sharedFolder(): string | undefined {
  const folder = process.env.WAYWRIGHT_PRINTS ?? '../shared/prints';
  return existsSync(folder) ? folder : undefined;
}

/** Names of the tuning pictures that are there; none where the folder is not. */
export function sharedPrintNames(): string[] {
  const folder = sharedFolder();
  if (folder === undefined) return [];
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .map((name) => name.slice(0, -'.json'.length))
    .toSorted();
}

/**
 * A tuning picture with its truth.
 * @throws Error  the folder is not there, or the picture is not in it
 */
export async function sharedPrint(name: string): Promise<SharedPrint> {
  const folder = sharedFolder();
  if (folder === undefined) throw new Error(`no folder of tuning pictures; ${name} was asked for`);
  const { difficulty, input, truth } = JSON.parse(
    readFileSync(join(folder, `${name}.json`), 'utf8'),
  ) as SharedFile;
  const [a, b, c, d] = input.corners_px.map(([x, y]) => ({ x, y }));
  const corners: Corners = [a!, b!, c!, d!];
  return {
    name,
    difficulty,
    picture: await pictureIn(join(folder, input.image)),
    corners,
    size: { length_mm: input.length_mm, width_mm: input.width_mm },
    exclusions: input.exclusions.map(exclusionOf),
    truth: {
      spots: truth.spots.map(({ x, y, area }) => ({ x_mm: x, y_mm: y, area_mm2: area })),
      cells: truth.cells.map(({ col, row, count, bearing_pct, net_mm2, partial }) => ({
        col,
        row,
        count,
        bearing_pct,
        net_mm2,
        partial,
      })),
      bearing_pct: truth.bearing_pct,
      net_mm2: truth.net_area_mm2,
    },
    clipped_pct: truth.glare_pct,
  };
}

function exclusionOf(written: WrittenExclusion): Exclusion {
  if (written.type === 'circle') return written;
  return { ...written, points: written.points.map(([x, y]) => ({ x, y })) };
}
