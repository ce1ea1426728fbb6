import { poseSize } from '../body/displacement.ts';
import type { AxisName, Vector } from '../body/vector.ts';
import { type Block, type BlockFaceName, block } from './block.ts';
import type { Travel } from './travel.ts';

/** What a mill or grinder makes, as its file has it: the carriages from the base to the cut, one of them the slide that is scraped. */
export interface MadeBlockAt<Place> {
  readonly carriages: readonly {
    readonly name: string;
    readonly along: AxisName;
    readonly carries: 'work' | 'tool';
    readonly is_slide?: boolean | undefined;
  }[];
  /** Lengths of a middling block and where its middle stands, in the slide's frame, mm. */
  readonly size_mm: Place;
  readonly middle_mm: Place;
  /** Faces that are cut and what they are called: "top", "side toward the column". The first lies on the table's far side, parallel to it. */
  readonly faces: readonly { readonly face: BlockFaceName; readonly name: string }[];
  /** Each of the block's lengths in words, and what lies toward its plus end: "along the table", "the column". */
  readonly lengths: Readonly<Record<AxisName, string>>;
  readonly plus: Readonly<Record<AxisName, string>>;
}

export type MadeBlock = MadeBlockAt<Vector>;

/** How the slide stands against a true machine. */
export interface SlideTurned {
  /** µrad about x, y, z of its frame; what nothing tells is 0. */
  readonly turn_urad: Vector;
  readonly sd_urad: Vector;
  /** Its poses along its travel from a survey, its middle being place 0; left out: it goes straight. */
  readonly travel?: Travel;
}

/**
 * A block cut all over in one setting on a machine whose slide stands turned, all else being true: poses of `travel`, and the
 * same turn at every place of it.
 *
 * @throws RangeError  the block is longer along the travel than `travel` is known
 * @example  a saddle that stands level along by +30 µrad (about y) under a cut of 100 mm along x: top out of parallel by 3 µm
 */
export function blockMade(made: MadeBlock, size_mm: Vector, slide: SlideTurned): Block {
  const { middle_mm } = made;
  const still = (name: string, along: AxisName): Travel => {
    const half = size_mm['xyz'.indexOf(along)]! / 2;
    return {
      name,
      along,
      stations_mm: [-half, half],
      poses: [
        [0, 0, 0, 0, 0, 0],
        [0, 0, 0, 0, 0, 0],
      ],
    };
  };
  const turned = (name: string, along: AxisName): Travel => {
    const base = slide.travel ?? still(name, along);
    const [a, b, c] = slide.turn_urad;
    const variance = slide.sd_urad.map((sd) => sd ** 2);
    return {
      ...base,
      name,
      poses: base.poses.map(([x, y, z, i, j, k]) => [x, y, z, i + a, j + b, k + c]),
      doubt: {
        ...base.doubt,
        common_covariance: Array.from({ length: poseSize }, (_, i) =>
          Array.from({ length: poseSize }, (_, j) => (i === j && i >= 3 ? variance[i - 3]! : 0)),
        ),
      },
    };
  };
  return block({
    carriages: made.carriages.map(({ name, along, carries, is_slide }) => ({
      travel: is_slide ? turned(name, along) : still(name, along),
      carries,
      reference_mm: [0, 0, 0],
    })),
    tool_mm: middle_mm,
    middle_mm,
    size_mm,
    faces: made.faces.map(({ face }) => face),
  });
}
