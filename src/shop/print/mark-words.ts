import type { PlaceWords } from '../../core/ledger/setup.ts';
import type { Exclusion } from '../../core/print/exclusion.ts';
import type { PlaceMm, SurfaceSize } from '../../core/print/picture.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { counted } from '../phrase.ts';
import { areaWithin } from './mark-area.ts';
import { sizeOf, sizeWords } from './mark-sizes.ts';

/** What a mark is called: "hole", "groove", "patch". */
export const markKind = ({ type }: Exclusion): 'hole' | 'groove' | 'patch' =>
  type === 'circle' ? 'hole' : type === 'polyline' ? 'groove' : 'patch';

/** "Groove 1": numbered in the order in which they were marked, as on the photo. */
export const markName = (mark: Exclusion, index: number): string => {
  const kind = markKind(mark);
  return `${kind.charAt(0).toUpperCase()}${kind.slice(1)} ${index + 1}`;
};

/** "5 mm wide, 4 points", "10 mm across", "4 corners, 320 mm²". */
export function markSize(mark: Exclusion, units: UnitSystem): string {
  if (mark.type === 'polygon')
    return `${counted(mark.points.length, 'corner')}, ${areaWords(areaWithin(mark.points), units)}`;
  const size = sizeWords(sizeOf(mark)!, units);
  return mark.type === 'circle' ? `${size} across` : `${size} wide, ${counted(mark.points.length, 'point')}`;
}

/** "88 mm from the headstock end, 20 mm from the operator's side". */
export function placeWords(
  { x, y }: PlaceMm,
  places: Pick<PlaceWords, 'minus_end' | 'minus_side'>,
  units: UnitSystem,
): string {
  const length = (mm: number) =>
    units === 'metric' ? `${Number(mm.toFixed(1))}\u00a0mm` : `${(mm / 25.4).toFixed(2)}\u00a0in`;
  const bare = (words: string) => words.replace(/^the /, '');
  return `${length(x)} from the ${bare(places.minus_end)}, ${length(y)} from the ${bare(places.minus_side)}`;
}

/** What one of its points is: "Middle", "End 1", "Bend 2", "Corner 3". */
export function pointName(mark: Exclusion, point: number): string {
  if (mark.type === 'circle') return 'Middle';
  if (mark.type === 'polygon') return `Corner ${point + 1}`;
  return point === 0 || point === mark.points.length - 1 ? `End ${point + 1}` : `Bend ${point + 1}`;
}

/** "27 840 mm²", "43.15 in²". */
export function areaWords(mm2: number, units: UnitSystem): string {
  if (units === 'inch') return `${(mm2 / 25.4 ** 2).toFixed(2)}\u00a0in²`;
  return `${String(Math.round(mm2)).replace(/\B(?=(\d{3})+$)/g, '\u00a0')}\u00a0mm²`;
}

/** What of the face is counted: "Net area 27 840 mm² of 28 800 mm²." */
export const netAreaWords = (
  net_area_mm2: number,
  { length_mm, width_mm }: SurfaceSize,
  units: UnitSystem,
): string => `Net area ${areaWords(net_area_mm2, units)} of ${areaWords(length_mm * width_mm, units)}.`;

/** How many are left out: "1 groove and 2 holes are left out."; nothing without any. */
export function leftOutWords(marks: readonly Exclusion[]): string {
  const parts = (['groove', 'hole', 'patch'] as const)
    .map((kind) => [kind, marks.filter((mark) => markKind(mark) === kind).length] as const)
    .filter(([, many]) => many > 0)
    .map(([kind, many]) => counted(many, kind, kind === 'patch' ? 'patches' : `${kind}s`));
  if (parts.length === 0) return '';
  const list = parts.length === 1 ? parts[0] : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
  return `${list} ${marks.length === 1 ? 'is' : 'are'} left out.`;
}

/** What to do next while marking. `ends`: how many are tapped of what is no mark yet; `kind`: of the one that is chosen. */
export function markingAsk(
  doing: 'hole' | 'groove' | 'patch' | 'more' | undefined,
  ends: number,
  many: number,
  kind?: 'hole' | 'groove' | 'patch',
): string {
  if (doing === 'hole') return 'Tap the middle of the hole.';
  if (doing === 'groove') return ends ? 'Tap the groove’s other end.' : 'Tap one end of the groove.';
  if (doing === 'patch')
    return ends
      ? `Tap the patch’s ${ends === 1 ? 'second' : 'third'} corner, going round it.`
      : 'Tap one corner of the patch.';
  if (doing === 'more')
    return kind === 'patch'
      ? 'Tap the patch’s next corner, or its first one to close it.'
      : 'Tap the groove’s next point; when it is whole, go on.';
  return many === 0
    ? 'Mark what is no bearing face: each groove, each hole, each patch. They are left out of the net area.'
    : 'Pick a mark to move or size it, or mark another.';
}
