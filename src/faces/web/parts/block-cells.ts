import type { AxisName, Vector } from '../../../core/body/vector.ts';
import type { MadeBlock } from '../../../core/parts/made-block.ts';
import { foundIn, type PartsCell, type PartsRead } from './cells.ts';

const axes: readonly AxisName[] = ['x', 'y', 'z'];
const key = (axis: AxisName): string => `block ${axis}`;

/** A cell for each length of the block. */
export const blockCells = (makes: MadeBlock | undefined): readonly PartsCell[] =>
  makes
    ? axes.map((axis, k) => ({
        key: key(axis),
        label: `Block, ${makes.lengths[axis]}`,
        unit: 'mm',
        signed: false,
        taken: makes.size_mm[k]!,
        least: 1,
        most: 5000,
      }))
    : [];

/** The block's lengths as typed; undefined where one cannot be read. */
export function blockSize(reads: Readonly<Record<string, PartsRead>>): Vector | undefined {
  const [x, y, z] = axes.map((axis) => foundIn(reads[key(axis)]!)?.value);
  return x === undefined || y === undefined || z === undefined ? undefined : [x, y, z];
}
