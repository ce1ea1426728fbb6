import type { DovetailAngle } from '../core/gib/dovetail-angle.ts';
import type { PlayFound, PlayRead } from '../core/gib/gib-play.ts';
import type { TaperFound, TaperMatch } from '../core/gib/gib-shape.ts';
import type { KeeperFound } from '../core/gib/keeper.ts';
import { judgeParallel, type RollsFound, type RollsRead } from '../core/gib/rolls.ts';
import { sayLength } from '../core/quantity/length.ts';
import { say, sayDeviation } from '../core/quantity/say.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';

export const um = (value: number, sd?: number, system: UnitSystem = 'metric'): string =>
  sayDeviation(Math.abs(value), system, { signed: false, ...(sd === undefined ? {} : { sd }) }).text;
export const mm = (value: number, sd?: number, system: UnitSystem = 'metric'): string =>
  sayLength(Math.abs(value), system, sd === undefined ? { decimals: system === 'metric' ? 3 : 4 } : { sd })
    .text;
export const turns = (value: number): string =>
  say(Math.abs(value), 'turns', { signed: false, decimals: 2 }).text;

/** How wide, how parallel, and what is to come off. */
export function rollsSentence(
  found: RollsFound,
  read: RollsRead & { readonly most_um: number },
  system: UnitSystem,
): string {
  const { verdict } = judgeParallel(found, read.most_um);
  const end = found.wider_um > 0 ? 'far' : 'near';
  const width = `${read.kind === 'male' ? 'The root is' : 'The floor is'} ${mm(found.mean_mm, undefined, system)} wide, corner to corner`;
  const parallel = `the ${end} end wider by ${um(found.wider_um, found.sd_um, system)} over ${sayLength(found.length_mm, system, {}).text}: ${verdict}`;
  const cut =
    verdict === 'outside'
      ? ` Take ${um(found.take_um, undefined, system)}, square to it, off the gib flank at the ${found.take_at} end, tapering to nothing at the other; the guide flank gives the direction and is left.`
      : verdict === 'not proven'
        ? ' Measure again before anything comes off.'
        : '';
  return `${width}; ${parallel}.${cut}`;
}

export function angleSentence(
  { angle_deg, sd_deg, off_min, gap_um, gap_sd_um }: DovetailAngle,
  system: UnitSystem,
): string {
  const size = say(angle_deg, '°', { signed: false, sd: sd_deg }).text;
  const known = Math.abs(gap_um) > 2 * gap_sd_um;
  const off = say(Math.abs(off_min), '′', { signed: false, sd: 60 * sd_deg }).text;
  return known
    ? `The angle is ${size}: ${off} ${off_min > 0 ? 'steeper' : 'flatter'} than drawn, which opens ${um(gap_um, gap_sd_um, system)} over the flank.`
    : `The angle is ${size}: no other than drawn, as far as this can tell (${um(gap_um, gap_sd_um, system)} over the flank).`;
}

const oneIn = (taper: number, sd: number): string =>
  `1 in ${say(1 / taper, '', { signed: false, sd: sd / taper ** 2 }).text.trim()}`;

export const taperSentence = (
  { taper, sd, thin_mm, thick_mm, off_line_um }: TaperFound,
  system: UnitSystem,
): string =>
  `The gib tapers ${oneIn(taper, sd)}, from ${mm(thin_mm, undefined, system)} to ${mm(thick_mm, undefined, system)}; no place lies further than ${um(off_line_um, undefined, system)} off its straight wedge.`;

export function spaceSentence(space: TaperFound, match: TaperMatch, system: UnitSystem): string {
  const known = Math.abs(match.proud_um) > 2 * match.sd_um;
  const told = `Its space tapers ${oneIn(space.taper, space.sd)}`;
  return known
    ? `${told}: the gib is too ${match.proud_um > 0 ? 'steep' : 'flat'} by ${um(match.proud_um, match.sd_um, system)} over its length and bears at the ${match.tight} alone. Take ${um(match.take_um, undefined, system)} off its face there, nothing at the other end.`
    : `${told}: the two agree, as far as this can tell (${um(match.proud_um, match.sd_um, system)} over its length).`;
}

/** Play at both ends, and what to do. */
export function playSentence(found: PlayFound, read: PlayRead, system: UnitSystem): string {
  const { thick_um, thin_um, sd_um, judged, differ_um } = found;
  const plays = `Play square to the gib: ${um(thick_um, sd_um, system)} at the thick end (${judged.thick.verdict}), ${um(thin_um, sd_um, system)} at the thin end (${judged.thin.verdict}); the ends differ by ${um(differ_um, Math.SQRT2 * sd_um, system)} (${judged.alike.verdict}).`;
  return `${plays} ${deedWords(found, read, system)}`;
}

function deedWords(found: PlayFound, read: PlayRead, system: UnitSystem): string {
  const { in_mm, in_sd_mm, turns: by, thickness_um, deed, differ_um, tight } = found;
  const way = in_mm >= 0 ? 'in' : 'out';
  const set = `push the gib ${way} by ${mm(in_mm, in_sd_mm, system)}${by === undefined ? '' : `, ${turns(by)} of its screw`}`;
  const even =
    found.judged.alike.verdict === 'outside'
      ? `take ${um(differ_um, undefined, system)} off its face at the ${tight}, nothing at the other end`
      : 'scrape it to its print';
  const reach = `that is more than its travel: ${um(thickness_um, undefined, system)}, square to the gib, is`;
  switch (deed) {
    case 'leave':
      return 'Leave it.';
    case 'measure again':
      return 'Measure again before anything moves.';
    case 'set':
      return `${capital(set)}.`;
    case 'scrape, then set':
      return `First ${even}; then ${set}.`;
    case 'shim':
      return `It would have to go in by ${mm(in_mm, undefined, system)}; ${reach} wanting on its back: a steel shim of one thickness, full face.`;
    case 'line or make new':
      return `It would have to go in by ${mm(in_mm, undefined, system)}; ${reach} wanting: too much for a shim; line its back or make it new, thicker and longer, and cut it to length last.`;
    case 'scrape thinner':
      return `It would have to come out by ${mm(in_mm, undefined, system)}; ${reach} too much: scrape that off its face, evenly.`;
    case 'cut again':
      return `It would have to come out by ${mm(in_mm, undefined, system)}; ${reach} too much to scrape: cut its back again, ${read.scrape_um > 0 ? 'the scraping allowance left on' : 'and leave on what its scraping takes'}.`;
  }
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A keeper's fit, at its tightest. */
export function keeperSentence(found: KeeperFound, system: UnitSystem): string {
  const { name, tightest_um, sd_um, tightest_at_mm, judged, varies_um, may_vary_um, by_um } = found;
  const told = `${name}: ${um(tightest_um, sd_um, system)} at its tightest, at ${sayLength(tightest_at_mm, system, {}).text}: ${judged.verdict}; it varies by ${um(varies_um, undefined, system)} along the travel, ${um(may_vary_um, undefined, system)} at most is wanted.`;
  const deed = {
    leave: 'Leave it.',
    'measure again': 'Measure again before anything comes off.',
    'way first': `The way's underside first: take up to ${um(by_um, undefined, system)} off it where the keeper is tight, parallel to the top way; then fit the keeper.`,
    close: `Close it by ${um(by_um, undefined, system)}: off the keeper's step, or out of the shim behind it.`,
    open: `Open it by ${um(by_um, undefined, system)}: a shim behind the keeper, or off its sliding face.`,
  }[found.deed];
  return `${told} ${deed}`;
}
