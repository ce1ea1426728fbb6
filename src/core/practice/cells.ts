import { displacementRow, type PoseNumbers } from '../body/displacement.ts';
import { type Slide, zonesOf } from '../body/slide.ts';
import { add, axisVector, cross, scale } from '../body/vector.ts';

/** A little piece of a pad's face. */
export interface Cell {
  readonly zone: number;
  readonly pad: number;
  /** Place along the pad, −1 at its minus end to 1, and across it, −1 to 1. */
  readonly along: number;
  readonly across: number;
  readonly area_mm2: number;
  readonly row: PoseNumbers;
}

/** Twelve cells a zone: six along the travel, two across. */
export const cellsAlong = 6;
export const cellsAcross = 2;

/** All cells, pad by pad, strip by strip across, minus end of the travel first: neighbours along a strip stand side by side. */
export function cellsOf(slide: Slide): Cell[] {
  const zones = zonesOf(slide);
  const travel = axisVector(slide.free);
  let firstZone = 0;
  return slide.pads.flatMap((pad, padIndex) => {
    const start = firstZone;
    firstZone += pad.zones;
    const { normal, area_mm2 } = zones[start]!;
    const sideways = cross(normal, travel);
    const count = pad.zones * cellsAlong;
    return Array.from({ length: cellsAcross }, (_, strip) => (strip + 0.5) / (cellsAcross / 2) - 1).flatMap(
      (across) =>
        Array.from({ length: count }, (_, i): Cell => {
          const along = ((i + 0.5) / count) * 2 - 1;
          const place = add(
            add(pad.centre_mm, scale(travel, (along * pad.length_mm) / 2)),
            scale(sideways, (across * pad.width_mm) / 2),
          );
          return {
            zone: start + Math.floor(i / cellsAlong),
            pad: padIndex,
            along,
            across,
            area_mm2: area_mm2 / (cellsAlong * cellsAcross),
            row: displacementRow(normal, place),
          };
        }),
    );
  });
}

/** Mean over each zone's cells. */
export function zoneMeans(cells: readonly Cell[], values: ArrayLike<number>, zones: number): number[] {
  const sum = Array<number>(zones).fill(0);
  const count = Array<number>(zones).fill(0);
  cells.forEach((cell, c) => {
    sum[cell.zone]! += values[c]!;
    count[cell.zone]! += 1;
  });
  return sum.map((total, z) => total / count[z]!);
}
