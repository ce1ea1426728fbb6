import type { Slide } from '../core/body/slide.ts';
import { axisVector, cross, dot, scale, unit, type Vector } from '../core/body/vector.ts';
import type { TurnedOver } from '../core/ledger/entry.ts';
import type { PlaceWords } from '../core/ledger/setup.ts';

/** A place of the part as it lies on the bench with its underside up, mm: right, away from the viewer, up. */
export interface BenchPlace {
  readonly right_mm: number;
  readonly away_mm: number;
  readonly up_mm: number;
}

/** How the part lies on the bench: the one crossing from the slide's frame to the bench's. */
export interface BenchSide {
  /** Where a place, or a direction, of the slide's frame comes to lie. */
  readonly place: (p_mm: Vector) => BenchPlace;
  /** Directions of the slide's frame that come to point right, away and up. */
  readonly right: Vector;
  readonly away: Vector;
  readonly up: Vector;
}

/**
 * The slide's frame → the bench's frame.
 *
 * The part is taken as it sits on its ways, seen from above with its travel running right, and is turned half round: end over
 * end about the axis that points away, front to back about its travel.
 *
 *     end over end:   right = −travel,  away =  across,  up = −out
 *     front to back:  right =  travel,  away = −across,  up = −out
 *
 * `out` is the axis nearest to the mean of the pads' normals (z on a lathe saddle), across = out × travel.
 */
export function onBench(slide: Slide, turnedOver: TurnedOver): BenchSide {
  const { right: travel, away: across, up: out } = onWays(slide);
  const isEndOverEnd = turnedOver === 'end over end';
  const right = isEndOverEnd ? scale(travel, -1) : travel;
  const away = isEndOverEnd ? across : scale(across, -1);
  return lying(right, away, scale(out, -1));
}

/** The part as it sits on its ways: travel to the right, across away from the viewer, out of the ways up. */
export function onWays(slide: Slide): BenchSide {
  const travel = axisVector(slide.free);
  const out = outOf(slide);
  return lying(travel, cross(out, travel), out);
}

const lying = (right: Vector, away: Vector, up: Vector): BenchSide => ({
  right,
  away,
  up,
  place: (p) => ({ right_mm: dot(right, p), away_mm: dot(away, p), up_mm: dot(up, p) }),
});

/** The axis, with its sign, along which the slide lifts off its ways. */
export function outOf(slide: Slide): Vector {
  const normals = slide.pads.map((pad) => unit(pad.normal));
  const mean: Vector = [0, 1, 2].map((i) =>
    normals.reduce((sum, normal) => sum + normal[i]!, 0),
  ) as unknown as Vector;
  const travel = axisVector(slide.free);
  const candidates: Vector[] = (['z', 'y', 'x'] as const)
    .map(axisVector)
    .filter((axis) => dot(axis, travel) === 0)
    .flatMap((axis) => [axis, scale(axis, -1)]);
  return candidates.reduce((best, axis) => (dot(axis, mean) > dot(best, mean) + 1e-9 ? axis : best));
}

/** What stands where around the part on the bench, and the corner to find first: minus end, minus side. */
export interface BenchWords {
  readonly left: string;
  readonly right: string;
  readonly far: string;
  readonly near: string;
  readonly corner: {
    readonly end: string;
    readonly side: string;
    readonly at: 'left' | 'right';
    readonly edge: 'near' | 'far';
  };
}

/** The names of the ends and sides as they come to lie. */
export function benchWords(side: BenchSide, places: PlaceWords): BenchWords {
  const isPlusRight = sum(side.right) > 0;
  const isPlusFar = sum(side.away) > 0;
  return {
    left: isPlusRight ? places.minus_end : places.plus_end,
    right: isPlusRight ? places.plus_end : places.minus_end,
    far: isPlusFar ? places.plus_side : places.minus_side,
    near: isPlusFar ? places.minus_side : places.plus_side,
    corner: {
      end: places.minus_end,
      side: places.minus_side,
      at: isPlusRight ? 'left' : 'right',
      edge: isPlusFar ? 'near' : 'far',
    },
  };
}

/** An axis vector has one part that is not 0: its sign tells whether it points plus. */
const sum = (axis: Vector): number => axis[0] + axis[1] + axis[2];
