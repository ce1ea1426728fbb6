import type { SurfaceSize } from '../../src/core/print/picture.ts';
import { perMm } from './field.ts';

export interface TrueSpot {
  readonly x_mm: number;
  readonly y_mm: number;
  readonly area_mm2: number;
}

export interface TrueCell {
  readonly col: number;
  readonly row: number;
  readonly count: number;
  readonly bearing_pct: number;
  readonly net_mm2: number;
  /** Cut by the edge of the surface. A square cut by a groove only is whole here. */
  readonly partial: boolean;
}

/** What a picture shows, known exactly. */
export interface Truth {
  readonly spots: readonly TrueSpot[];
  readonly cells: readonly TrueCell[];
  readonly bearing_pct: number;
  readonly net_mm2: number;
}

export const leastSpot_mm2 = 0.5;

/**
 * Spots are 8-connected regions of at least 0.5 mm², each counted in the square that holds its centroid; bearing is contact
 * over net area, with regions below 0.5 mm² in it. The definitions of the shared tuning pictures.
 * @param is   1 where it touches, at `perMm`, row by row from (0,0)
 * @param out  1 where the surface is cut away
 */
export function truthOf(is: Uint8Array, out: Uint8Array, size: SurfaceSize, cell_mm = 25): Truth {
  const width = Math.round(size.length_mm * perMm);
  const height = Math.round(size.width_mm * perMm);
  const spots = regionsOf(is, width, height).filter(({ area_mm2 }) => area_mm2 >= leastSpot_mm2);
  const cols = Math.ceil(size.length_mm / cell_mm - 1e-9);
  const rows = Math.ceil(size.width_mm / cell_mm - 1e-9);
  const net = new Float64Array(cols * rows);
  const touches = new Float64Array(cols * rows);
  const count = new Uint32Array(cols * rows);
  for (let row = 0; row < height; row++)
    for (let col = 0; col < width; col++) {
      const at = row * width + col;
      if (out[at] === 1) continue;
      const cell = cellOf((col + 0.5) / perMm, (row + 0.5) / perMm);
      net[cell] = net[cell]! + 1;
      touches[cell] = touches[cell]! + is[at]!;
    }
  for (const { x_mm, y_mm } of spots) {
    const cell = cellOf(x_mm, y_mm);
    count[cell] = count[cell]! + 1;
  }
  const all = net.reduce((sum, one) => sum + one, 0);
  return {
    spots,
    cells: Array.from(net, (area, cell) => {
      const col = cell % cols;
      const row = Math.floor(cell / cols);
      return {
        col,
        row,
        count: count[cell]!,
        bearing_pct: area === 0 ? 0 : (100 * touches[cell]!) / area,
        net_mm2: area / perMm ** 2,
        partial: (col + 1) * cell_mm > size.length_mm + 1e-9 || (row + 1) * cell_mm > size.width_mm + 1e-9,
      };
    }),
    bearing_pct: (100 * touches.reduce((sum, one) => sum + one, 0)) / all,
    net_mm2: all / perMm ** 2,
  };

  function cellOf(x: number, y: number): number {
    return Math.min(rows - 1, Math.floor(y / cell_mm)) * cols + Math.min(cols - 1, Math.floor(x / cell_mm));
  }
}

/** 8-connected regions, found by flooding from each element not seen yet. */
function regionsOf(is: Uint8Array, width: number, height: number): TrueSpot[] {
  const left = Uint8Array.from(is);
  const waiting: number[] = [];
  const found: TrueSpot[] = [];
  for (let start = 0; start < left.length; start++) {
    if (left[start] === 0) continue;
    left[start] = 0;
    waiting.push(start);
    let n = 0;
    let sumX = 0;
    let sumY = 0;
    for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
      const col = at % width;
      const row = (at - col) / width;
      n++;
      sumX += col;
      sumY += row;
      for (let r = Math.max(0, row - 1); r <= Math.min(height - 1, row + 1); r++)
        for (let c = Math.max(0, col - 1); c <= Math.min(width - 1, col + 1); c++) {
          const next = r * width + c;
          if (left[next] === 0) continue;
          left[next] = 0;
          waiting.push(next);
        }
    }
    found.push({
      x_mm: (sumX / n + 0.5) / perMm,
      y_mm: (sumY / n + 0.5) / perMm,
      area_mm2: n / perMm ** 2,
    });
  }
  return found;
}
