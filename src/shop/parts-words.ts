import type { FacedWish, TurnedWish } from '../contract/parts.ts';
import type { Vector } from '../core/body/vector.ts';
import type { Block, BlockFace } from '../core/parts/block.ts';
import type { Faced } from '../core/parts/faced.ts';
import type { Doubted } from '../core/parts/spindle.ts';
import type { Turned } from '../core/parts/turned.ts';
import { sayDeviation } from '../core/quantity/say.ts';
import { saySlope } from '../core/quantity/slope.ts';
import { tableColumns } from '../core/quantity/table-column.ts';
import { told } from '../core/quantity/told.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';
import { capital } from './phrase.ts';

/** Where the travel begins, at the headstock, and ends. */
export interface BedWords {
  readonly from_mm: number;
  readonly to_mm: number;
}

/** Less than this is nothing in any shop, µm and µrad, where no doubt says so. */
const nothing = 0.05;

/** Value and doubt as a size, the sign being said in words. */
const size = ({ value, sd }: Required<Doubted>, system: UnitSystem): string =>
  Math.abs(value) + 2 * sd < nothing
    ? `less than ${sayDeviation(nothing, system, { signed: false, rough: true }).text}`
    : sayDeviation(Math.abs(value), system, { sd, signed: false }).text;
const within = (range: Required<Doubted>, system: UnitSystem): string =>
  `within ${size(range, system).replace('less than ', '')}`;
const signed = ({ value, sd }: Required<Doubted>, system: UnitSystem): string =>
  sayDeviation(value, system, { sd }).text;
const angle = ({ value, sd }: Required<Doubted>, system: UnitSystem): string =>
  saySlope(value, system, { sd, ...(system === 'metric' ? { unit: 'urad' } : {}) }).text;

/** Whether a value is lost in its doubt. */
const isLost = ({ value, sd }: Required<Doubted>): boolean => Math.abs(value) <= Math.max(2 * sd, nothing);

/** Height's share of the whole worth a word. */
const wordsFrom = 0.1;

/** "Over 300 mm near the headstock, turned diameter grows 6 ± 2 µm toward the tailstock." */
export function turnedText(
  wish: TurnedWish,
  made: Turned,
  bed: BedWords,
  system: UnitSystem = 'metric',
): string {
  const length = told(system).place;
  const long = wish.to_mm - wish.from_mm;
  const { taper_um, bow_um, cylindricity_um } = made;
  const where = `over ${length(long)} ${place((wish.from_mm + wish.to_mm) / 2, long, bed)}`;
  const taper = isLost(taper_um)
    ? `turned diameter stays the same as far as can be told (${signed(taper_um, system)} toward the tailstock)`
    : `turned diameter ${taper_um.value > 0 ? 'grows' : 'shrinks'} ${size(taper_um, system)} toward the tailstock`;
  const bow = isLost(bow_um)
    ? ''
    : `, with ${bow_um.value > 0 ? 'a barrel' : 'a hollow'} of ${size(bow_um, system)} in its middle`;
  const whole = Math.max(...made.diameter_um) - Math.min(...made.diameter_um);
  const height =
    Math.abs(made.from_height_um) > Math.max(nothing, wordsFrom * whole)
      ? ` ${told(system).size(made.from_height_um, { decimals: 1 })} of the difference comes from the tool’s rising and falling on a radius of ${length(wish.radius_mm)}.`
      : '';
  return `${capital(where)}, ${taper}${bow}. Cylindricity ${size(cylindricity_um, system)}.${height}`;
}

/** "A face of 300 mm comes out concave, 4.5 ± 0.9 µm from rim to centre." */
export function facedText(
  wish: FacedWish,
  made: Faced,
  corner?: Required<Doubted>,
  system: UnitSystem = 'metric',
): string {
  const length = told(system).place;
  const isShoulder = wish.inner_mm > 0;
  const what = isShoulder
    ? `A shoulder from ${length(2 * wish.rim_mm).replace(/\smm$/, '')} to ${length(2 * wish.inner_mm)}`
    : `A face of ${length(2 * wish.rim_mm)} across`;
  const { concave_um } = made;
  const ends = isShoulder ? 'from rim to root' : 'from rim to centre';
  const form = isLost(concave_um)
    ? `comes out flat as far as can be told (${signed(concave_um, system)} ${ends}; plus is concave)`
    : `comes out ${concave_um.value > 0 ? 'concave' : 'convex'}, ${size(concave_um, system)} ${ends} (${angle(made.square_urad, system)} to a plane square to the axis; plus is concave)`;
  const past =
    isShoulder || isLost(concave_um) ? '' : ' An indicator swept past the centre shows twice that.';
  const bent =
    Math.abs(made.form_um) > nothing
      ? ` The cross ways leave it ${made.form_um > 0 ? 'hollow' : 'ridged'} by ${told(system).size(Math.abs(made.form_um), { decimals: 1, signed: false })} between.`
      : '';
  const angleWords =
    corner &&
    ` The corner with ${wish.beside} is ${isLost(corner) ? 'square as far as can be told' : corner.value > 0 ? 'more open than square' : 'tighter than square'}: ${angle(corner, system)}.`;
  return `${what} ${form}.${past}${bent} Flatness ${size(made.flatness_um, system)}.${angleWords ?? ''}`;
}

/** Each face, then each corner. */
export function blockText(name: string, made: Block, size_mm: Vector, system: UnitSystem = 'metric'): string {
  const { length } = tableColumns(system);
  const faces = made.faces.map((one) => faceWords(one, system));
  const corners = made.corners.map(({ faces: [a, b], square_urad }) => {
    const state = isLost(square_urad)
      ? 'square as far as can be told'
      : square_urad.value > 0
        ? 'more open than square'
        : 'tighter than square';
    return `Between ${a} and ${b} the angle of the metal is ${state}: ${angle(square_urad, system)}.`;
  });
  return [
    `${capital(name)}, ${size_mm.map(length.figures).join(' × ')} ${length.unit}.`,
    ...faces,
    ...corners,
  ].join(' ');
}

function faceWords(face: BlockFace, system: UnitSystem): string {
  const flat = `flat ${within(face.flatness_um, system)}`;
  if (face.face === '+z' || face.face === '-z')
    return `Face ${face.face}: ${flat}, parallel to the table ${within(face.parallel_um, system)}.`;
  return `Face ${face.face}: ${flat}.`;
}

/** Where along the bed: by thirds, or the whole of it. */
function place(middle: number, long: number, { from_mm, to_mm }: BedWords): string {
  const whole = to_mm - from_mm;
  if (long > 0.8 * whole) return 'of the whole travel';
  const share = (middle - from_mm) / whole;
  return share < 1 / 3
    ? 'near the headstock'
    : share > 2 / 3
      ? 'near the tailstock'
      : 'in the middle of the bed';
}
