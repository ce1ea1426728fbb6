import { displacement, type Pose, poseFromNumbers } from '../body/displacement.ts';
import { settledPose, settling } from '../body/settle.ts';
import { type Slide, zoneVector } from '../body/slide.ts';
import { subtract, type Vector } from '../body/vector.ts';

/** A place whose height counts: an axis, a pitch line, a nut. In the machine's frame, on a body. */
export interface Place {
  readonly name: string;
  readonly body: string;
  readonly at_mm: Vector;
}

/** Where one body rests on another. */
export interface Joint {
  readonly name: string;
  readonly moves: string;
  readonly on: string;
  readonly slide: Slide;
  /** The slide's middle in the machine's frame. */
  readonly origin_mm: Vector;
  /** Which way its own x lies on the machine. Along y, its own y points back along the machine's x. */
  readonly travel: 'x' | 'y';
}

/** Metal or liner that came off or was put on at a joint, square to each face. */
export interface Change {
  readonly name: string;
  readonly joint: string;
  /** As found on the machine, or part of the work that is planned. */
  readonly when: 'found' | 'planned';
  /** µm by pad; plus: put on, minus: taken off. */
  readonly thickness_um: Readonly<Record<string, number>>;
  /** One sd of each of them by itself. */
  readonly sd_um: number;
}

/** A height that matters: how far one place stands above another. */
export interface WantedHeight {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  /** Band of its departure from the drawing, µm; plus: `to` stands too high. */
  readonly low_um: number;
  readonly high_um: number;
  readonly aim_um: number;
  /** Why the band lies as it does. */
  readonly why?: string;
  /** Its departure as measured on the machine as found, before anything planned; takes the place of the sum of what was found. */
  readonly measured?: { readonly um: number; readonly sd_um: number };
  /** Pressure angle of a rack whose teeth face down and whose pinion is `to`. */
  readonly rack_deg?: number;
}

/** All that heights are worked out from. */
export interface Chain {
  readonly places: readonly Place[];
  readonly joints: readonly Joint[];
  readonly heights: readonly WantedHeight[];
  readonly changes: readonly Change[];
}

/** A point of the machine in a joint's own frame. */
export function inJoint(joint: Pick<Joint, 'origin_mm' | 'travel'>, at_mm: Vector): Vector {
  const [x, y, z] = subtract(at_mm, joint.origin_mm);
  return joint.travel === 'x' ? [x, y, z] : [y, -x, z];
}

/** How a joint's body comes to lie when its faces change by so much, µm by pad, plus: put on. */
export function poseAfter(slide: Slide, thickness_um: Readonly<Record<string, number>>): Pose {
  const lists = Object.fromEntries(
    slide.pads.flatMap((pad) => {
      const um = thickness_um[pad.name];
      return um === undefined ? [] : [[pad.name, Array<number>(pad.zones).fill(-um)] as const];
    }),
  );
  return poseFromNumbers(settledPose(settling(slide), zoneVector(slide, lists)));
}

/** How far a pose of a joint lifts a place of the machine, µm. */
export const liftAt = (joint: Joint, pose: Pose, at_mm: Vector): number =>
  displacement(pose, inJoint(joint, at_mm))[2];

/** The joints that carry a body, from itself down to what stands still. */
export function carriers(joints: readonly Joint[], body: string): Joint[] {
  const found: Joint[] = [];
  for (let at = body; ; ) {
    const joint = joints.find((one) => one.moves === at);
    if (!joint) return found;
    if (found.includes(joint))
      throw new RangeError(`"${body}" is carried by itself, through "${joint.name}"`);
    found.push(joint);
    at = joint.on;
  }
}

/** The two ends of a height, each with the joints that carry it. */
export interface Ends {
  readonly from: { readonly place: Place; readonly joints: readonly Joint[] };
  readonly to: { readonly place: Place; readonly joints: readonly Joint[] };
}

/** @throws RangeError  a place that the chain does not have */
export function endsOf(
  chain: Pick<Chain, 'places' | 'joints'>,
  height: Pick<WantedHeight, 'from' | 'to'>,
): Ends {
  const end = (name: string): Ends['from'] => {
    const place = chain.places.find((one) => one.name === name);
    if (!place) throw new RangeError(`"${name}" is not a place of the chain`);
    return { place, joints: carriers(chain.joints, place.body) };
  };
  return { from: end(height.from), to: end(height.to) };
}

/**
 * How a pose of a joint moves a height, µm: what it lifts `to` by, less what it lifts `from` by. A joint that carries both
 * ends lifts them alike, so only its roll is left; that is why heights round a ring add up to nothing.
 */
export function effectOn(ends: Ends, joint: Joint, pose: Pose): number {
  const lift = (end: Ends['from']): number =>
    end.joints.includes(joint) ? liftAt(joint, pose, end.place.at_mm) : 0;
  return lift(ends.to) - lift(ends.from);
}
