import type { Exclusion } from '../../core/print/exclusion.ts';
import type { PlaceMm, SurfaceSize } from '../../core/print/picture.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { leastApart_mm, markRefusal, mostMarks, outlineRefusal } from './mark-fit.ts';
import { broughtOn, distance } from './mark-places.ts';
import { firstSize_mm, sizeOf, sizeWords } from './mark-sizes.ts';
import { type Before, step } from './mark-undo.ts';
import { markKind, markName, pointName } from './mark-words.ts';

/** What a tap begins: a hole, a groove, or a patch, which is an area of any outline. */
export type MarkTool = 'hole' | 'groove' | 'patch';

/** Grooves, holes and patches being marked, half-made ones too: what a reload must give back. */
export interface Marking {
  readonly marks: readonly Exclusion[];
  /** What a tap on the photo makes: a hole, a groove's end, a patch's corner, or one more point of the one that is chosen. */
  readonly doing?: MarkTool | 'more';
  /** A groove's first end, or a patch's first two corners: too few yet to be a mark. */
  readonly ends?: readonly PlaceMm[];
  readonly chosen?: number;
  /** Which of its points moves; absent: all of it. */
  readonly point?: number;
  /** The way back, the last step at the end. */
  readonly past?: readonly Before[];
  /** The run of moves that the last step belongs to. */
  readonly run?: string;
  /** What came of the last deed. */
  readonly said?: { readonly words: string; readonly refused: boolean };
}

/** What they are marked on. */
export interface MarkedFace extends SurfaceSize {
  readonly units: UnitSystem;
}

/** A tap is off the face when it misses it by more than this, mm; nearer, the edge was meant. */
const miss_mm = 2;

type Chosen = { readonly mark: Exclusion; readonly at: number };
export const chosenOf = ({ marks, chosen }: Marking): Chosen | undefined => {
  const mark = chosen === undefined ? undefined : marks[chosen];
  return mark && { mark, at: chosen! };
};

export const told = (words: string) => ({ said: { words, refused: false } });
export const refused = (was: Marking, words: string): Marking => ({ ...was, said: { words, refused: true } });

/** Without what is asked for or said: marks, and the way back. */
const settled = ({ marks, past }: Marking): Marking => ({ marks, ...(past ? { past } : {}) });

/** The next tap begins a hole, a groove or a patch. */
export const beginMark = (was: Marking, doing: MarkTool): Marking => ({ ...settled(was), doing });

/** The next taps add points to the groove or the patch that is chosen, after its last. */
export const lengthen = (was: Marking): Marking =>
  (chosenOf(was)?.mark.type ?? 'circle') === 'circle'
    ? was
    : { ...settled(was), chosen: was.chosen!, doing: 'more' };

const letGo = {
  groove: 'The groove had one end only; nothing was marked.',
  patch: 'The patch had fewer than three corners; nothing was marked.',
} as const;

/** Taps make nothing any more; a groove with one end and a patch with two corners are let go. */
export const leaveOff = (was: Marking): Marking => ({
  ...settled(was),
  ...(was.chosen === undefined ? {} : { chosen: was.chosen }),
  ...(was.ends ? told(letGo[was.doing === 'patch' ? 'patch' : 'groove']) : {}),
});

/** A mark to work on, and one of its points or all of it. */
export const pick = (was: Marking, chosen: number, point?: number): Marking => ({
  ...settled(was),
  chosen,
  ...(point === undefined ? {} : { point }),
  ...(was.run !== undefined && was.chosen === chosen && was.point === point ? { run: was.run } : {}),
});

/** What is begun, by who cannot tap: about the middle of the face, to be moved from there. */
export function putInMiddle(was: Marking, face: MarkedFace): Marking {
  const middle = { x: face.length_mm / 2, y: face.width_mm / 2 };
  if (was.doing === 'hole') return tapped(was, middle, face);
  const reach = Math.min(face.length_mm, face.width_mm) / 4;
  const doing = was.doing === 'patch' ? 'patch' : 'groove';
  const places =
    doing === 'groove'
      ? [
          [-reach, 0],
          [reach, 0],
        ]
      : [
          [-reach, -reach],
          [reach, -reach],
          [reach, reach],
          [-reach, reach],
        ];
  return places.reduce<Marking>(
    (so, [x, y]) => tapped(so, { x: middle.x + x!, y: middle.y + y! }, face),
    beginMark(was, doing),
  );
}

/** A tap on the photo, as a place on the surface; `reach_mm`: how near a mark it must be to pick it. */
export function tapped(was: Marking, tap: PlaceMm, face: MarkedFace, reach_mm = 0): Marking {
  const at = broughtOn(tap, face);
  if (was.doing && Math.hypot(tap.x - at.x, tap.y - at.y) > miss_mm)
    return refused(was, 'That is off the face; nothing was marked. Tap within its edge.');
  switch (was.doing) {
    case 'hole':
      return added(was, { type: 'circle', ...at, r: sizeFor('hole', was, face) / 2 }, face);
    case 'groove': {
      const [first] = was.ends ?? [];
      if (!first) return step(was, { ...settled(was), doing: 'groove', ends: [at] });
      return added(was, { type: 'polyline', width: sizeFor('groove', was, face), points: [first, at] }, face);
    }
    case 'patch': {
      const points = [...(was.ends ?? []), at];
      if (points.length > 1 && apart(points.at(-2)!, at) < leastApart_mm)
        return refused(was, 'The patch has a corner there already. Tap its next one.');
      if (points.length < 3) return step(was, { ...settled(was), doing: 'patch', ends: points });
      return added(was, { type: 'polygon', points }, face);
    }
    case 'more':
      return lengthened(was, at, face);
    default: {
      const near = was.marks
        .map((mark, k) => ({ k, far: distance(mark, tap) }))
        .sort((a, b) => a.far - b.far)[0];
      return near && near.far <= reach_mm ? pick(was, near.k) : was;
    }
  }
}

const apart = (p: PlaceMm, q: PlaceMm): number => Math.hypot(p.x - q.x, p.y - q.y);

/** As large as the last of its kind, which on one pad is most often right. */
const sizeFor = (kind: 'hole' | 'groove', { marks }: Marking, { units }: MarkedFace): number => {
  const last = marks.findLast((mark) => markKind(mark) === kind);
  return (last && sizeOf(last)) ?? firstSize_mm(kind, units);
};

function added(was: Marking, mark: Exclusion, face: MarkedFace): Marking {
  if (was.marks.length >= mostMarks) return refused(was, `A face has at most ${mostMarks} marks.`);
  const wrong = markRefusal(mark, face, face.units) ?? outlineRefusal(mark);
  if (wrong) return refused(was, wrong);
  const chosen = was.marks.length;
  const name = markName(mark, chosen);
  return step(was, {
    ...settled(was),
    marks: [...was.marks, mark],
    chosen,
    ...(mark.type === 'circle' ? {} : { doing: 'more' as const }),
    ...told(
      mark.type === 'polygon'
        ? `${name} marked. Tap more corners, or close it.`
        : `${name} marked, ${sizeWords(sizeOf(mark)!, face.units)}. Set its size.`,
    ),
  });
}

function lengthened(was: Marking, at: PlaceMm, face: MarkedFace): Marking {
  const one = chosenOf(was);
  if (!one || one.mark.type === 'circle') return leaveOff(was);
  const { points } = one.mark;
  const closes = one.mark.type === 'polygon' && apart(points[0]!, at) < leastApart_mm;
  if (closes) return leaveOff(was);
  if (apart(points.at(-1)!, at) < leastApart_mm)
    return refused(was, `The ${markKind(one.mark)} has a point there already. Tap its next one.`);
  const now = replaced(was, { ...one.mark, points: [...points, at] }, face, 'more');
  return step(
    was,
    now.said?.refused ? now : { ...now, ...told(`${pointName(one.mark, points.length)} added.`) },
  );
}

/** The chosen mark as it is to be, where it can be; the way back is the caller's. */
export function replaced(was: Marking, mark: Exclusion, face: MarkedFace, doing?: 'more'): Marking {
  const before = was.marks[was.chosen!]!;
  // What a file put there crossed over may be moved, and put right bit by bit.
  const wrong =
    markRefusal(mark, face, face.units) ?? (outlineRefusal(before) ? undefined : outlineRefusal(mark));
  if (wrong) return refused(was, wrong);
  return {
    ...pick(was, was.chosen!, was.point),
    marks: was.marks.map((one, k) => (k === was.chosen ? mark : one)),
    ...(doing ? { doing } : {}),
  };
}

/** The mark taken away. */
export function removed(was: Marking, at: number): Marking {
  const mark = was.marks[at];
  if (!mark) return was;
  return step(was, {
    ...settled(was),
    marks: was.marks.filter((_, k) => k !== at),
    ...told(`${markName(mark, at)} taken away.`),
  });
}
