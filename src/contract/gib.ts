import { z } from 'zod';
import type { PlayRead } from '../core/gib/gib-play.ts';
import type { TaperRead } from '../core/gib/gib-shape.ts';
import type { KeeperRead } from '../core/gib/keeper.ts';
import type { RollsRead } from '../core/gib/rolls.ts';
import { BadInput, checked, type Issue } from './refusal.ts';
import { finite, name } from './slide.ts';

const um = z.number().min(-1e5).max(1e5);
const clear_um = z.number().min(0).max(1e4);
const mm = z.number().min(0.01).max(1e4);
const sd_um = z.number().min(1e-3).max(1e3);
const stations = z.array(z.number().min(-1e5).max(1e5)).min(2).max(100);
const angle = z.number().min(20).max(90);
const wedge = z.strictObject({
  stations_mm: stations,
  thick_mm: z.array(mm).min(2).max(100),
  reading_sd_um: sd_um.optional(),
});

/** `gib`'s input as it is written. */
export const gibSchema = z.strictObject({
  angle_deg: angle.optional(),
  rolls: z
    .strictObject({
      kind: z.enum(['male', 'female']),
      roll_mm: mm,
      stations_mm: stations,
      read_mm: z.array(mm).min(2).max(100),
      reading_sd_um: sd_um.optional(),
      flats_low_um: z.array(um).max(100).optional(),
      most_um: clear_um.optional(),
    })
    .optional(),
  angle_check: z
    .strictObject({
      small_mm: mm,
      large_mm: mm,
      over_small_mm: mm,
      over_large_mm: mm,
      reading_sd_um: sd_um.optional(),
      flank_mm: mm,
    })
    .optional(),
  gib: wedge.optional(),
  space: wedge.optional(),
  taper_one_in: z.number().min(10).max(1000).optional(),
  play: z
    .strictObject({
      how: z.enum(['square', 'across', 'lift']),
      thick_end_um: clear_um,
      thin_end_um: clear_um,
      reading_sd_um: sd_um.optional(),
      scrape_um: clear_um.optional(),
      low_um: clear_um.optional(),
      high_um: clear_um.optional(),
      aim_um: clear_um.optional(),
      alike_um: clear_um.optional(),
      in_left_mm: z.number().min(0).max(1e3).optional(),
      out_left_mm: z.number().min(0).max(1e3).optional(),
      screw_mm: z.number().min(0.1).max(20).optional(),
    })
    .optional(),
  keepers: z
    .array(
      z.strictObject({
        name,
        stations_mm: stations,
        clearance_um: z.array(clear_um).min(2).max(100),
        reading_sd_um: sd_um.optional(),
        low_um: clear_um.optional(),
        high_um: clear_um.optional(),
        aim_um: clear_um.optional(),
      }),
    )
    .max(8)
    .optional(),
  scrape: z
    .strictObject({ machine: name, step: name, dimensions: z.record(z.string(), finite).optional() })
    .optional(),
});
type Written = z.output<typeof gibSchema>;

/** What `gib` is asked, with what was left out filled in. */
export interface GibAsk {
  readonly angle_deg: number;
  readonly rolls?: RollsRead & { readonly most_um: number };
  readonly angle_check?: {
    readonly small_mm: number;
    readonly large_mm: number;
    readonly over_small_mm: number;
    readonly over_large_mm: number;
    readonly reading_sd_um: number;
    /** Width of the flank along its slope. */
    readonly flank_mm: number;
  };
  readonly gib?: TaperRead;
  readonly space?: TaperRead;
  /** By the drawing, when the gib itself was not measured. */
  readonly taper?: number;
  readonly play?: Omit<PlayRead, 'taper' | 'angle_deg'>;
  readonly keepers: readonly KeeperRead[];
  readonly scrape?: {
    readonly machine: string;
    readonly step: string;
    readonly dimensions: Readonly<Record<string, number>>;
  };
}

/** Taken when left out; common practice: play and clearance as oil wants it, readings with a shop's usual means. */
const usual = {
  angle_deg: 60,
  micrometer_sd_um: 2,
  play_sd_um: 1,
  play: { low_um: 8, high_um: 25, aim_um: 15, alike_um: 5 },
  keeper: { low_um: 10, high_um: 40, aim_um: 20 },
  parallel_um: 5,
} as const;

/**
 * `gib`'s input, see docs/contract.md.
 * @throws BadInput
 */
export function gibInput(value: unknown): GibAsk {
  const written = checked(gibSchema, value);
  const issues = gibIssues(written);
  if (issues.length > 0) throw new BadInput(issues);
  const { angle_deg = usual.angle_deg, rolls, angle_check, gib, space, taper_one_in, play } = written;
  const tapered = (one: NonNullable<Written['gib']>): TaperRead => ({
    ...one,
    reading_sd_um: one.reading_sd_um ?? usual.micrometer_sd_um,
  });
  return {
    angle_deg,
    ...(rolls
      ? {
          rolls: {
            kind: rolls.kind,
            roll_mm: rolls.roll_mm,
            angle_deg,
            stations_mm: rolls.stations_mm,
            read_mm: rolls.read_mm,
            reading_sd_um: rolls.reading_sd_um ?? usual.micrometer_sd_um,
            ...(rolls.flats_low_um ? { flats_low_um: rolls.flats_low_um } : {}),
            most_um: rolls.most_um ?? usual.parallel_um,
          },
        }
      : {}),
    ...(angle_check
      ? {
          angle_check: {
            ...angle_check,
            reading_sd_um: angle_check.reading_sd_um ?? usual.micrometer_sd_um,
          },
        }
      : {}),
    ...(gib ? { gib: tapered(gib) } : {}),
    ...(space ? { space: tapered(space) } : {}),
    ...(taper_one_in === undefined ? {} : { taper: 1 / taper_one_in }),
    ...(play ? { play: playOf(play) } : {}),
    keepers: (written.keepers ?? []).map((one) => ({
      name: one.name,
      stations_mm: one.stations_mm,
      clearance_um: one.clearance_um,
      reading_sd_um: one.reading_sd_um ?? usual.micrometer_sd_um,
      ...bandOf(one, usual.keeper),
    })),
    ...(written.scrape ? { scrape: { ...written.scrape, dimensions: written.scrape.dimensions ?? {} } } : {}),
  };
}

interface WrittenBand {
  readonly low_um?: number | undefined;
  readonly high_um?: number | undefined;
  readonly aim_um?: number | undefined;
}

/** A band with what was left out as usual. */
const bandOf = (one: WrittenBand, as: { low_um: number; high_um: number; aim_um: number }) => ({
  low_um: one.low_um ?? as.low_um,
  high_um: one.high_um ?? as.high_um,
  aim_um: one.aim_um ?? as.aim_um,
});

function playOf(play: NonNullable<Written['play']>): Omit<PlayRead, 'taper' | 'angle_deg'> {
  const { in_left_mm, out_left_mm, screw_mm } = play;
  return {
    how: play.how,
    thick_end_um: play.thick_end_um,
    thin_end_um: play.thin_end_um,
    reading_sd_um: play.reading_sd_um ?? usual.play_sd_um,
    scrape_um: play.scrape_um ?? 0,
    ...bandOf(play, usual.play),
    alike_um: play.alike_um ?? usual.play.alike_um,
    ...(in_left_mm === undefined ? {} : { in_left_mm }),
    ...(out_left_mm === undefined ? {} : { out_left_mm }),
    ...(screw_mm === undefined ? {} : { screw_mm }),
  };
}

/** Lists of unequal length, places out of order, bands the wrong way round, nothing to work on. */
function gibIssues(written: Written): Issue[] {
  const issues: Issue[] = [];
  const add = (path: string, found: unknown, expected: string) =>
    issues.push({ path, found: String(found), expected });
  const along = (
    path: string,
    places: readonly number[],
    lists: Record<string, readonly unknown[] | undefined>,
  ) => {
    places.forEach((at, k) => {
      if (k > 0 && !(at > places[k - 1]!)) add(`${path}.stations_mm[${k}]`, at, `more than ${places[k - 1]}`);
    });
    for (const [key, list] of Object.entries(lists))
      if (list && list.length !== places.length)
        add(`${path}.${key}`, `${list.length} values`, `${places.length}, one for each place`);
  };
  const band = (path: string, one: { low_um: number; high_um: number; aim_um: number }) => {
    if (!(one.low_um < one.high_um)) add(`${path}.high_um`, one.high_um, `more than ${one.low_um}`);
    else if (!(one.low_um <= one.aim_um && one.aim_um <= one.high_um))
      add(`${path}.aim_um`, one.aim_um, `from ${one.low_um} to ${one.high_um}`);
  };
  const {
    angle_deg = usual.angle_deg,
    rolls,
    angle_check,
    gib,
    space,
    taper_one_in,
    play,
    keepers = [],
    scrape,
  } = written;
  if (!rolls && !angle_check && !gib && !play && keepers.length === 0)
    add('', 'nothing to work on', 'one of rolls, angle_check, gib, play, keepers');
  if (rolls) {
    along('rolls', rolls.stations_mm, { read_mm: rolls.read_mm, flats_low_um: rolls.flats_low_um });
    if (angle_deg >= 90) add('angle_deg', angle_deg, 'a flank that leans, below 90, to measure over rolls');
  }
  if (angle_check && !(angle_check.large_mm > angle_check.small_mm))
    add('angle_check.large_mm', angle_check.large_mm, `more than ${angle_check.small_mm}`);
  else if (
    angle_check &&
    !(angle_check.over_large_mm - angle_check.over_small_mm > angle_check.large_mm - angle_check.small_mm)
  )
    add(
      'angle_check.over_large_mm',
      angle_check.over_large_mm,
      'more over the large rolls than over the small ones, by more than the rolls differ',
    );
  for (const [path, one] of [
    ['gib', gib],
    ['space', space],
  ] as const) {
    if (!one) continue;
    along(path, one.stations_mm, { thick_mm: one.thick_mm });
    if (!(one.thick_mm.at(-1)! > one.thick_mm[0]!))
      add(
        `${path}.thick_mm`,
        one.thick_mm.at(-1),
        `more than ${one.thick_mm[0]}: places run from the thin end`,
      );
  }
  if (space && !gib) add('gib', 'nothing', 'the gib, to hold against its space');
  if (play && !gib && taper_one_in === undefined)
    add('taper_one_in', 'nothing', 'the taper, 60 for 1:60, or the gib measured');
  if (play) {
    band('play', bandOf(play, usual.play));
    if (play.how === 'lift' && angle_deg >= 89) add('play.how', '"lift"', 'a flank that leans: below 89°');
  }
  keepers.forEach((one, k) => {
    along(`keepers[${k}]`, one.stations_mm, { clearance_um: one.clearance_um });
    band(`keepers[${k}]`, bandOf(one, usual.keeper));
  });
  if (scrape && !play) add('play', 'nothing', 'the play at both ends, to say where to scrape');
  return issues;
}
