import type { SinkLimit } from '../observe/round.ts';
import { type Chain, endsOf, inJoint } from './chain.ts';
import { heightFound } from './heights.ts';

/** How far a slide may still sink at a place before a height leaves its band. */
export interface SinkRoom extends SinkLimit {
  /** Room by the best estimate, and one sd of it; `most_um` is the room less two sd, and never below 0. */
  readonly room_um: number;
  readonly sd_um: number;
}

/**
 * Sink limits of a joint for the planner, in the joint's own frame: one for each height with an end on it alone. As its body
 * sinks, a `to` on it comes lower and a `from` on it makes the height larger.
 *
 * @param chain  with all changes made before the scraping that is to be planned
 */
export function sinkRooms(chain: Chain, joint: string): SinkRoom[] {
  const its = chain.joints.find((one) => one.name === joint);
  if (!its) throw new RangeError(`"${joint}" is not a joint of the chain`);
  return chain.heights.flatMap((height): SinkRoom[] => {
    const ends = endsOf(chain, height);
    const carriesTo = ends.to.joints.includes(its);
    if (carriesTo === ends.from.joints.includes(its)) return [];
    const { um, sd_um } = heightFound(chain, height);
    const room_um = carriesTo ? um - height.low_um : height.high_um - um;
    const { at_mm } = (carriesTo ? ends.to : ends.from).place;
    return [
      {
        name: height.name,
        at_mm: inJoint(its, at_mm),
        most_um: Math.max(0, room_um - 2 * sd_um),
        room_um,
        sd_um,
      },
    ];
  });
}
