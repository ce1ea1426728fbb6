import type { GibAsk } from '../contract/gib.ts';
import type { DovetailAngle } from '../core/gib/dovetail-angle.ts';
import type { PlayFound, PlayRead } from '../core/gib/gib-play.ts';
import type { TaperFound, TaperMatch } from '../core/gib/gib-shape.ts';
import type { KeeperFound } from '../core/gib/keeper.ts';
import type { RollsFound } from '../core/gib/rolls.ts';
import { plain } from '../core/quantity/show.ts';
import { cot } from '../core/sums/sum.ts';
import type { Worked } from './worked.ts';

const n = (value: number): string => plain(value, 8).replace('-', '−');

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

/** Every number of the answer with its formula and the numbers put in. */
export const gibWorking = (parts: Parts): Worked[] => [
  ...rollsWorking(parts),
  ...angleWorking(parts),
  ...taperWorking(parts),
  ...playWorking(parts),
  ...parts.keepers.map(
    (one): Worked => ({
      what: `${one.name}: how it varies`,
      formula: 'widest − tightest',
      worked: `${n(one.widest_um)} − ${n(one.tightest_um)} = ${n(one.varies_um)} µm; may vary by half the clearance aimed at, ${n(one.may_vary_um)} µm`,
    }),
  ),
];

function rollsWorking({ ask, rolls }: Parts): Worked[] {
  if (!rolls || !ask.rolls) return [];
  const { kind, roll_mm, angle_deg, stations_mm, read_mm, flats_low_um } = ask.rolls;
  const [sign, letters] =
    kind === 'male' ? ['−', 'a = x − D (1 + cot(A/2))'] : ['+', 'b = y + D (1 + cot(A/2))'];
  const source = 'Machinery’s Handbook, measuring dovetail slides (second hand)';
  return [
    ...stations_mm.map((at, k): Worked => {
      const low = flats_low_um?.[k] ?? 0;
      const other = kind === 'male' ? '+' : '−';
      const feigned = low === 0 ? '' : ` ${other} 2 × ${n(low / 1000)} × cot ${n(angle_deg)}°`;
      return {
        what: `width at ${n(at)} mm`,
        formula: low === 0 ? letters : `${letters} ${other} 2 v cot(A)`,
        worked: `${n(read_mm[k]!)} ${sign} ${n(roll_mm)} × (1 + cot ${n(angle_deg / 2)}°)${feigned} = ${n(read_mm[k]!)} ${sign} ${n(roll_mm * (1 + cot(angle_deg / 2)))}${low === 0 ? '' : ` ${other} ${n((2 * low * cot(angle_deg)) / 1000)}`} = ${n(rolls.width_mm[k]!)} mm`,
        source,
      };
    }),
    {
      what: 'wider at the far end',
      formula: 'slope of the least-squares line through the widths × length',
      worked: `${n(rolls.wider_um / rolls.length_mm)} µm/mm × ${n(rolls.length_mm)} mm = ${n(rolls.wider_um)} µm, one sd ${n(rolls.sd_um)} µm`,
    },
    {
      what: 'to take off, square to the flank',
      formula: 'w = wider × sin(A)',
      worked: `${n(Math.abs(rolls.wider_um))} × sin ${n(angle_deg)}° = ${n(rolls.take_um)} µm`,
    },
  ];
}

function angleWorking({ ask, angle }: Parts): Worked[] {
  if (!angle || !ask.angle_check) return [];
  const { small_mm, large_mm, over_small_mm, over_large_mm, flank_mm } = ask.angle_check;
  return [
    {
      what: 'angle from two sizes of roll',
      formula: 'A = 2 acot((x₂ − x₁)/(D₂ − D₁) − 1)',
      worked: `2 acot((${n(over_large_mm)} − ${n(over_small_mm)})/(${n(large_mm)} − ${n(small_mm)}) − 1) = ${n(angle.angle_deg)}°`,
      source: 'the same rule for two sizes of roll, seen on a workshop page',
    },
    {
      what: 'opens over the flank',
      formula: 'flank × tan(A − drawn)',
      worked: `${n(flank_mm)} mm × tan(${n(angle.angle_deg)}° − ${n(ask.angle_deg)}°) = ${n(angle.gap_um)} µm`,
    },
  ];
}

function taperWorking({ ask, own, space, match }: Parts): Worked[] {
  const fitted = (what: string, found: TaperFound | undefined): Worked[] =>
    found
      ? [
          {
            what: `taper of the ${what}`,
            formula: 'slope of the least-squares line through its thicknesses',
            worked: `${n(1000 * found.taper)} mm/m ± ${n(2000 * found.sd)} = 1 in ${n(found.one_in)}`,
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
            worked: `(${n(1000 * own.taper)} − ${n(1000 * space.taper)}) mm/m × ${n(length)} mm = ${n(match.proud_um)} µm`,
          },
        ]
      : []),
  ];
}

function playWorking({ read, play }: Parts): Worked[] {
  if (!read || !play) return [];
  const { how, angle_deg, taper, scrape_um, aim_um, screw_mm } = read;
  const times = { square: '', across: ` × sin ${n(angle_deg)}°`, lift: ` × cos ${n(angle_deg)}°` }[how];
  const scrapes = play.deed === 'scrape, then set' || scrape_um > 0;
  const rules = play.in_mm * taper * 1000 + aim_um - (scrapes ? scrape_um : 0);
  return [
    {
      what: 'play square to the gib',
      formula: { square: 'as read', across: 'across × sin(A)', lift: 'lift × cos(A)' }[how],
      worked: `thick end ${n(read.thick_end_um)}${times} = ${n(play.thick_um)} µm; thin end ${n(read.thin_end_um)}${times} = ${n(play.thin_um)} µm`,
    },
    {
      what: 'the gib goes in',
      formula: scrapes ? 'm = (loose end + still to scrape − aim) / taper' : 'm = (tight end − aim) / taper',
      worked:
        play.deed === 'leave' || play.deed === 'measure again'
          ? 'nothing: as it stands'
          : `(${n(rules)}${scrapes ? ` + ${n(scrape_um)}` : ''} − ${n(aim_um)}) µm × ${n(1 / taper)} = ${n(play.in_mm)} mm`,
    },
    {
      what: 'play taken up',
      formula: 'by one mm: taper; by one turn: lead × taper',
      worked: `${n(play.per_mm_um)} µm a mm${screw_mm === undefined ? '' : `; ${n(screw_mm)} mm × ${n(1 / taper)}⁻¹ = ${n(play.per_turn_um!)} µm a turn`}`,
    },
    ...(play.thickness_um > 0
      ? [
          {
            what: 'thickness that its travel does not reach',
            formula: 'missing travel × taper',
            worked: `${n(play.thickness_um / taper / 1000)} mm / ${n(1 / taper)} = ${n(play.thickness_um)} µm`,
          },
        ]
      : []),
  ];
}
