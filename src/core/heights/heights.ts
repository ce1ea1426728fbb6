import { tan } from '../sums/sum.ts';
import {
  type Chain,
  type Change,
  type Ends,
  effectOn,
  endsOf,
  type Joint,
  poseAfter,
  type WantedHeight,
} from './chain.ts';

/** One length of the drawing between two places of the chain; plus: upward on the way from `from` to `to`. */
export interface PartLink {
  readonly body: string;
  readonly mm: number;
}

/** What one change does to a height, µm; plus: `to` comes higher. */
export interface ChangeLink {
  readonly change: string;
  readonly joint: string;
  readonly when: Change['when'];
  readonly um: number;
  readonly sd_um: number;
}

/** A height as it comes out. */
export interface HeightFound {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  /** By the drawing; the sum of `parts`. */
  readonly drawn_mm: number;
  readonly parts: readonly PartLink[];
  readonly changes: readonly ChangeLink[];
  /** Departure from the drawing as found: the measured one where it was measured. */
  readonly found_um: number;
  /** Departure after all that is planned. */
  readonly um: number;
  readonly sd_um: number;
  readonly low_um: number;
  readonly high_um: number;
  readonly aim_um: number;
  /** Where it was measured: measured less the sum of what was found, and one sd of it. With it the links add up to `um`. */
  readonly closure?: { readonly um: number; readonly sd_um: number };
  /** What a rack's mesh gains in backlash by it, µm. */
  readonly backlash_um?: number;
  readonly why?: string;
}

/** The lengths of the drawing from one end to the other: down to the lowest shared joint, then up again. */
function partsOf(ends: Ends): PartLink[] {
  const below = ends.from.joints.filter((one) => !ends.to.joints.includes(one));
  const above = ends.to.joints.filter((one) => !ends.from.joints.includes(one)).reverse();
  const stops = [
    { body: ends.from.place.body, z: ends.from.place.at_mm[2] },
    ...below.map((joint) => ({ body: joint.on, z: joint.origin_mm[2] })),
    ...above.map((joint) => ({ body: joint.moves, z: joint.origin_mm[2] })),
  ];
  // Each length belongs to the body that joins two stops.
  return stops.map(({ body, z }, k) => ({
    body,
    mm: (stops[k + 1]?.z ?? ends.to.place.at_mm[2]) - z,
  }));
}

const sizeOf = (values: readonly number[]): number => Math.hypot(...values);

function changeLink(change: Change, joint: Joint, ends: Ends): ChangeLink {
  const um = effectOn(ends, joint, poseAfter(joint.slide, change.thickness_um));
  const sds = Object.keys(change.thickness_um).map(
    (pad) => change.sd_um * effectOn(ends, joint, poseAfter(joint.slide, { [pad]: 1 })),
  );
  return { change: change.name, joint: joint.name, when: change.when, um, sd_um: sizeOf(sds) };
}

const total = (links: readonly ChangeLink[]): number => links.reduce((sum, one) => sum + one.um, 0);

/**
 * A height, every link of it told.
 * @throws RangeError  a name that the chain does not have, a body that carries itself
 */
export function heightFound(chain: Chain, height: WantedHeight): HeightFound {
  const ends = endsOf(chain, height);
  const parts = partsOf(ends);
  const changes = chain.changes.flatMap((change) => {
    const joint = chain.joints.find((one) => one.name === change.joint);
    if (!joint) throw new RangeError(`"${change.joint}" is not a joint of the chain`);
    const carries = ends.from.joints.includes(joint) || ends.to.joints.includes(joint);
    return carries ? [changeLink(change, joint, ends)] : [];
  });
  const found = changes.filter((one) => one.when === 'found');
  const planned = changes.filter((one) => one.when === 'planned');
  const reckoned = { um: total(found), sd_um: sizeOf(found.map((one) => one.sd_um)) };
  const { measured } = height;
  const before = measured ?? reckoned;
  const um = before.um + total(planned);
  return {
    name: height.name,
    from: height.from,
    to: height.to,
    drawn_mm: ends.to.place.at_mm[2] - ends.from.place.at_mm[2],
    parts,
    changes,
    found_um: before.um,
    um,
    sd_um: sizeOf([before.sd_um, ...planned.map((one) => one.sd_um)]),
    low_um: height.low_um,
    high_um: height.high_um,
    aim_um: height.aim_um,
    ...(measured
      ? { closure: { um: measured.um - reckoned.um, sd_um: Math.hypot(measured.sd_um, reckoned.sd_um) } }
      : {}),
    // Teeth down: a pinion that sinks draws out of mesh on both flanks.
    ...(height.rack_deg === undefined ? {} : { backlash_um: -2 * um * tan(height.rack_deg) + 0 }),
    ...(height.why === undefined ? {} : { why: height.why }),
  };
}

/** Every wanted height of the chain. */
export const heightsFound = (chain: Chain): HeightFound[] =>
  chain.heights.map((height) => heightFound(chain, height));
