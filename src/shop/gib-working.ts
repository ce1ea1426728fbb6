import type { GibAsk } from '../contract/gib.ts';
import type { DovetailAngle } from '../core/gib/dovetail-angle.ts';
import type { PlayFound, PlayRead } from '../core/gib/gib-play.ts';
import type { TaperFound, TaperMatch } from '../core/gib/gib-shape.ts';
import type { KeeperFound } from '../core/gib/keeper.ts';
import type { RollsFound } from '../core/gib/rolls.ts';
import { plain } from '../core/quantity/show.ts';
import { clean, type UnitSystem } from '../core/quantity/unit.ts';
import { cot } from '../core/sums/sum.ts';
import { shownIn } from './shown-in.ts';
import type { Worked } from './worked.ts';

const digits = 8;
const n = (value: number): string => plain(value, digits).replace('-', '−');

/** Numbers of the working in one system, and a taper in mm/m or inches a foot. */
function shown(system: UnitSystem) {
  const metric = system === 'metric';
  const numbers = shownIn(system, digits);
  return {
    ...numbers,
    taper: (taper: number): string => n(clean(taper * numbers.per)),
    taperUnit: metric ? 'mm/m' : 'in/ft',
    oneLong: metric ? 'mm' : 'inch',
  };
}
type Shown = ReturnType<typeof shown>;

interface Parts {
  readonly ask: GibAsk;
  readonly rolls: RollsFound | undefined;
  readonly angle: DovetailAngle | undefined;
  readonly own: TaperFound | undefined;
  readonly space: TaperFound | undefined;
  readonly match: TaperMatch | undefined;
  readonly read: PlayRead | undefined;
  readonly play: PlayFound | undefined;
  readonly keepers: readonly KeeperFound[];
}

type Asked = Parts & { readonly in: Shown };

/** Every number of the answer with its formula and the numbers put in. */
export function gibWorking(parts: Parts, system: UnitSystem = 'metric'): Worked[] {
  const asked = { ...parts, in: shown(system) };
  const { um, small } = asked.in;
  return [
    ...rollsWorking(asked),
    ...angleWorking(asked),
    ...taperWorking(asked),
    ...playWorking(asked),
    ...parts.keepers.map(
      (one): Worked => ({
        what: `${one.name}: how it varies`,
        formula: 'widest − tightest',
        worked: `${um(one.widest_um)} − ${um(one.tightest_um)} = ${um(one.varies_um)} ${small}; may vary by half the clearance aimed at, ${um(one.may_vary_um)} ${small}`,
      }),
    ),
  ];
}

function rollsWorking({ ask, rolls, in: { mm, um, long, small } }: Asked): Worked[] {
  if (!rolls || !ask.rolls) return [];
  const { kind, roll_mm, angle_deg, stations_mm, read_mm, flats_low_um } = ask.rolls;
  const [sign, letters] =
    kind === 'male' ? ['−', 'a = x − D (1 + cot(A/2))'] : ['+', 'b = y + D (1 + cot(A/2))'];
  const source = 'Machinery’s Handbook, measuring dovetail slides (second hand)';
  return [
    ...stations_mm.map((at, k): Worked => {
      const low = flats_low_um?.[k] ?? 0;
      const other = kind === 'male' ? '+' : '−';
      const feigned = low === 0 ? '' : ` ${other} 2 × ${mm(low / 1000)} × cot ${n(angle_deg)}°`;
      return {
        what: `width at ${mm(at)} ${long}`,
        formula: low === 0 ? letters : `${letters} ${other} 2 v cot(A)`,
        worked: `${mm(read_mm[k]!)} ${sign} ${mm(roll_mm)} × (1 + cot ${n(angle_deg / 2)}°)${feigned} = ${mm(read_mm[k]!)} ${sign} ${mm(roll_mm * (1 + cot(angle_deg / 2)))}${low === 0 ? '' : ` ${other} ${mm((2 * low * cot(angle_deg)) / 1000)}`} = ${mm(rolls.width_mm[k]!)} ${long}`,
        source,
      };
    }),
    {
      what: 'wider at the far end',
      formula: 'slope of the least-squares line through the widths × length',
      worked: `${n(rolls.wider_um / rolls.length_mm)} ${small}/${long} × ${mm(rolls.length_mm)} ${long} = ${um(rolls.wider_um)} ${small}, one sd ${um(rolls.sd_um)} ${small}`,
    },
    {
      what: 'to take off, square to the flank',
      formula: 'w = wider × sin(A)',
      worked: `${um(Math.abs(rolls.wider_um))} × sin ${n(angle_deg)}° = ${um(rolls.take_um)} ${small}`,
    },
  ];
}

function angleWorking({ ask, angle, in: { mm, um, long, small } }: Asked): Worked[] {
  if (!angle || !ask.angle_check) return [];
  const { small_mm, large_mm, over_small_mm, over_large_mm, flank_mm } = ask.angle_check;
  return [
    {
      what: 'angle from two sizes of roll',
      formula: 'A = 2 acot((x₂ − x₁)/(D₂ − D₁) − 1)',
      worked: `2 acot((${mm(over_large_mm)} − ${mm(over_small_mm)})/(${mm(large_mm)} − ${mm(small_mm)}) − 1) = ${n(angle.angle_deg)}°`,
      source: 'the same rule for two sizes of roll, seen on a workshop page',
    },
    {
      what: 'opens over the flank',
      formula: 'flank × tan(A − drawn)',
      worked: `${mm(flank_mm)} ${long} × tan(${n(angle.angle_deg)}° − ${n(ask.angle_deg)}°) = ${um(angle.gap_um)} ${small}`,
    },
  ];
}

function taperWorking({ ask, own, space, match, in: shown }: Asked): Worked[] {
  const { mm, um, long, small, taperUnit } = shown;
  const fitted = (what: string, found: TaperFound | undefined): Worked[] =>
    found
      ? [
          {
            what: `taper of the ${what}`,
            formula: 'slope of the least-squares line through its thicknesses',
            worked: `${shown.taper(found.taper)} ${taperUnit} ± ${shown.taper(2 * found.sd)} = 1 in ${n(found.one_in)}`,
          },
        ]
      : [];
  const length = ask.gib ? ask.gib.stations_mm.at(-1)! - ask.gib.stations_mm[0]! : 0;
  return [
    ...fitted('gib', own),
    ...fitted('space', space),
    ...(own && space && match
      ? [
          {
            what: 'gib proud of its space at the thick end',
            formula: '(k gib − k space) × length',
            worked: `(${shown.taper(own.taper)} − ${shown.taper(space.taper)}) ${taperUnit} × ${mm(length)} ${long} = ${um(match.proud_um)} ${small}`,
          },
        ]
      : []),
  ];
}

function playWorking({ read, play, in: shown }: Asked): Worked[] {
  if (!read || !play) return [];
  const { mm, um, long, small, oneLong } = shown;
  const { how, angle_deg, taper, scrape_um, aim_um, screw_mm } = read;
  const times = { square: '', across: ` × sin ${n(angle_deg)}°`, lift: ` × cos ${n(angle_deg)}°` }[how];
  const scrapes = play.deed === 'scrape, then set' || scrape_um > 0;
  const rules = play.in_mm * taper * 1000 + aim_um - (scrapes ? scrape_um : 0);
  return [
    {
      what: 'play square to the gib',
      formula: { square: 'as read', across: 'across × sin(A)', lift: 'lift × cos(A)' }[how],
      worked: `thick end ${um(read.thick_end_um)}${times} = ${um(play.thick_um)} ${small}; thin end ${um(read.thin_end_um)}${times} = ${um(play.thin_um)} ${small}`,
    },
    {
      what: 'the gib goes in',
      formula: scrapes ? 'm = (loose end + still to scrape − aim) / taper' : 'm = (tight end − aim) / taper',
      worked:
        play.deed === 'leave' || play.deed === 'measure again'
          ? 'nothing: as it stands'
          : `(${um(rules)}${scrapes ? ` + ${um(scrape_um)}` : ''} − ${um(aim_um)}) ${small} × ${n(1 / taper)} = ${mm(play.in_mm)} ${long}`,
    },
    {
      what: 'play taken up',
      formula: `by one ${oneLong}: taper; by one turn: lead × taper`,
      worked: `${n(play.per_mm_um)} ${small} ${oneLong === 'mm' ? 'a mm' : 'an inch'}${screw_mm === undefined ? '' : `; ${mm(screw_mm)} ${long} × ${n(1 / taper)}⁻¹ = ${um(play.per_turn_um!)} ${small} a turn`}`,
    },
    ...(play.thickness_um > 0
      ? [
          {
            what: 'thickness that its travel does not reach',
            formula: 'missing travel × taper',
            worked: `${mm(play.thickness_um / taper / 1000)} ${long} / ${n(1 / taper)} = ${um(play.thickness_um)} ${small}`,
          },
        ]
      : []),
  ];
}
