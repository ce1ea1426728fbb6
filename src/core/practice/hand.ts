import type { Random } from '../math/random.ts';
import { type Cell, cellsAlong } from './cells.ts';

/** What one scraper takes off one material: hidden from whoever plans. */
export interface Hand {
  /** Of a whole pass, µm. */
  readonly pass_um: number;
  /** One a zone, about 1: some places cut easier. */
  readonly zoneFactor: readonly number[];
}

/** Scatter of a hand, as shares of what a pass takes. */
export const scatter = { round: 0.08, zone: 0.05, pass: 0.18, texture: 0.25 };
/** How much of a cell's height above its neighbourhood a whole pass takes with it: ridges go before hollows. */
const ridgeShare = 0.35;
/** Cells to each side that make up a cell's neighbourhood along the strip. */
const reach = 3;
/** A spotting pass takes this share of a whole one where the part bears poorly, and less where it bears well. */
const spotShare = { poor: 0.45, well: 0.4 };
/** One touching cell in four is missed. */
const spotMissed = 0.25;

/** Depth of whole passes, µm a cell. `passes` one a zone; a broken pass counts by its share. */
export function wholePasses(
  cells: readonly Cell[],
  gaps_um: ArrayLike<number>,
  passes: readonly number[],
  hand: Hand,
  random: Random,
): Float64Array {
  const gaps = Float64Array.from(gaps_um);
  const total = new Float64Array(cells.length);
  const round = 1 + random.normal(0, scatter.round);
  const most = Math.ceil(Math.max(0, ...passes));
  for (let k = 0; k < most; k++) {
    const cut = passes.map((m, z) => {
      const share = Math.min(1, Math.max(0, m - k));
      const factor = round * hand.zoneFactor[z]! * (1 + random.normal(0, scatter.pass));
      return share * hand.pass_um * Math.max(0, factor);
    });
    const strokes = overEdges(
      cells,
      cells.map((cell) => cut[cell.zone]!),
    );
    const ridge = ridges(cells, gaps);
    cells.forEach((_, c) => {
      const cover = Math.min(1, strokes[c]! / hand.pass_um);
      if (cover < 0.02) return;
      const texture = random.normal(0, scatter.texture * hand.pass_um);
      const depth = Math.max(0, strokes[c]! + cover * (texture + ridgeShare * ridge[c]!));
      gaps[c]! += depth;
      total[c]! += depth;
    });
  }
  return total;
}

/** Depth of spotting passes, µm a cell: on the blue alone, some of it missed. `blue` tells which cells took colour. */
export function spotPasses(
  cells: readonly Cell[],
  blue: readonly boolean[],
  passes: readonly number[],
  hand: Hand,
  random: Random,
): Float64Array {
  const bearing = blue.filter(Boolean).length / blue.length;
  const round = 1 + random.normal(0, scatter.round);
  const size = hand.pass_um * (spotShare.poor + (spotShare.well - spotShare.poor) * bearing);
  return Float64Array.from(cells, (cell, c) => {
    if (!blue[c]) return 0;
    let depth = 0;
    const wanted = passes[cell.zone]!;
    for (let k = 0; k < Math.ceil(wanted); k++) {
      const made = random.even() < (1 - spotMissed) * Math.min(1, wanted - k);
      const factor = round * hand.zoneFactor[cell.zone]! * (1 + random.normal(0, scatter.pass));
      const texture = random.normal(0, scatter.texture);
      if (made) depth += Math.max(0, size * (factor + texture));
    }
    return depth;
  });
}

/** Neighbours of a cell along its strip, itself included. */
function neighbours(cells: readonly Cell[], c: number, far: number): number[] {
  const { pad, across } = cells[c]!;
  const found: number[] = [];
  for (let i = Math.max(0, c - far); i <= Math.min(cells.length - 1, c + far); i++)
    if (cells[i]!.pad === pad && cells[i]!.across === across) found.push(i);
  return found;
}

/** Strokes are a cell or two long beyond the zone's edge: the cut is drawn out over it. */
const overEdges = (cells: readonly Cell[], cut: readonly number[]): number[] =>
  cells.map((_, c) => {
    const near = neighbours(cells, c, Math.floor(cellsAlong / 4));
    return near.reduce((sum, i) => sum + cut[i]!, 0) / near.length;
  });

/** How far each cell stands proud of its neighbourhood, µm. */
const ridges = (cells: readonly Cell[], gaps: ArrayLike<number>): number[] =>
  cells.map((_, c) => {
    const near = neighbours(cells, c, reach);
    return near.reduce((sum, i) => sum + gaps[i]!, 0) / near.length - gaps[c]!;
  });
