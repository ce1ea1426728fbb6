import type { Block, BlockCorner, BlockFace } from '../../core/parts/block.ts';
import type { MadeBlock } from '../../core/parts/made-block.ts';
import type { Doubted } from '../../core/parts/spindle.ts';
import { sayDeviation } from '../../core/quantity/say.ts';
import { saySlope } from '../../core/quantity/slope.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { Phrase } from '../phrase.ts';
import { isLost } from './part-sentence.ts';

/** One figure of a block, with a name and what its sign says. */
export interface BlockLine {
  readonly name: string;
  readonly said: string;
  /** In one word or two: "square", "more open"; absent for a size. */
  readonly word?: string;
}

/** Less than this, µm and µrad, is the rounding of sums: the figure does not hang on the slide at all. */
const rounding = 1e-6;
const hangs = ({ value, sd }: Required<Doubted>): boolean => Math.abs(value) > rounding || sd > rounding;

const spaced = (text: string): string => text.replace('\u2009', '\u202f');
const size = ({ value, sd }: Required<Doubted>, system: UnitSystem): string =>
  spaced(sayDeviation(Math.abs(value), system, { sd, signed: false }).text);

/** What a face of a block is called on this machine. */
export const faceName = (makes: MadeBlock, face: string): string =>
  makes.faces.find((one) => one.face === face)!.name;

const cornerWord = ({ square_urad }: BlockCorner): string =>
  isLost(square_urad) ? 'square as far as can be told' : square_urad.value > 0 ? 'more open' : 'tighter';

/** The face that lies parallel to the table: the first one that the machine's file names. */
const topOf = (made: Block): BlockFace => made.faces[0]!;

/** The slope of a face's least-squares plane along the axis where it is steeper, µrad, and which axis. */
const steepest = ({ tilt_urad, axes }: BlockFace) => {
  const k = Math.abs(tilt_urad[0].value) >= Math.abs(tilt_urad[1].value) ? 0 : 1;
  return { slope: tilt_urad[k], axis: axes[k] };
};

/** "The top comes out of parallel to the table by 3.0 ± 0.6 µm, thicker toward the column. Between the top and the side toward the column the metal is 9 ± 2 µm in 300 mm more open than square." */
export function blockSentence(makes: MadeBlock, made: Block, system: UnitSystem): Phrase {
  const top = topOf(made);
  const name = faceName(makes, top.face);
  const lean = steepest(top);
  const first: Phrase = isLost(lean.slope)
    ? [`The ${name} comes out `, { b: 'parallel to the table' }, ' as far as can be told.']
    : [
        `The ${name} comes `,
        { b: 'out of parallel' },
        ` to the table by ${size(top.parallel_um, system)}, ${lean.slope.value > 0 ? 'thicker' : 'thinner'} toward ${makes.plus[lean.axis]}.`,
      ];
  const worst = made.corners.reduce<BlockCorner | undefined>(
    (most, one) => (!most || Math.abs(one.square_urad.value) > Math.abs(most.square_urad.value) ? one : most),
    undefined,
  );
  if (!worst) return first;
  if (isLost(worst.square_urad))
    return [...first, ' Its corners are ', { b: 'square' }, ' as far as can be told.'];
  const [a, b] = worst.faces.map((face) => faceName(makes, face));
  const { value, sd } = worst.square_urad;
  return [
    ...first,
    ` Between the ${a} and the ${b} the metal is ${spaced(saySlope(Math.abs(value), system, { sd, signed: false }).text)} `,
    { b: value > 0 ? 'more open' : 'tighter' },
    ' than square.',
  ];
}

/** Every figure of a block that hangs on the slide: how parallel and flat its top, how square its corners, how flat its sides. */
export function blockLines(makes: MadeBlock, made: Block, system: UnitSystem): readonly BlockLine[] {
  const top = topOf(made);
  const parallel: BlockLine = {
    name: `${faceName(makes, top.face)}, parallel to the table within`,
    said: hangs(top.parallel_um) ? size(top.parallel_um, system) : size({ value: 0, sd: 0 }, system),
    word: isLost(steepest(top).slope) ? 'parallel as far as can be told' : 'out of parallel',
  };
  const corners = made.corners
    .filter(({ square_urad }) => hangs(square_urad))
    .map((corner) => ({
      name: `${faceName(makes, corner.faces[0])} to ${faceName(makes, corner.faces[1])}, plus: more open than square`,
      said: spaced(saySlope(corner.square_urad.value, system, { sd: corner.square_urad.sd }).text),
      word: cornerWord(corner),
    }));
  const flat = made.faces
    .filter(({ flatness_um }) => hangs(flatness_um))
    .map((face) => ({
      name: `${faceName(makes, face.face)}, flat within`,
      said: size(face.flatness_um, system),
    }));
  return [parallel, ...corners, ...flat];
}
