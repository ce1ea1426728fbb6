import type { Job } from '../../core/ledger/job.ts';
import { type RoundRecord, roundRecord } from '../../core/ledger/round-record.ts';
import type { Setup } from '../../core/ledger/setup.ts';
import { scrapedIn } from '../../core/ledger/steer-input.ts';
import { sayDeviation } from '../../core/quantity/say.ts';
import { saySlope } from '../../core/quantity/slope.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { JobAnswer, RoundHistory } from '../answer-job.ts';
import { counted, percent } from '../phrase.ts';
import { type PartsTold, partsTold } from './bench-parts.ts';
import { type SweepTold, sweepsTold } from './bench-sweeps.ts';

/** One measured round, in words. */
export interface RoundTold {
  readonly round: number;
  /** The day of its first entry, "25 Nov 2031"; absent when nothing of it is dated. */
  readonly on?: string;
  /** Each feature as it was known: "facing −43 ± 5 µm in 300 mm, convex". */
  readonly found: readonly string[];
  /** What was scraped after it: "16 zones, 1 to 4 passes"; absent when nothing was. */
  readonly scraped?: string;
}

/** A set-up as it was used. */
export interface SetupUsed {
  readonly name: string;
  readonly text: string;
}

/** A print of the whole slide: bearing share by pad and zone. */
export interface PrintTold {
  readonly round: number;
  readonly share: Readonly<Record<string, readonly number[]>>;
  /** "82 % of the area takes blue, thinnest zone 52 %". */
  readonly text: string;
}

/** What a job has to tell a customer, beside its lines. */
export interface JobAccount {
  readonly part: string;
  readonly rounds: readonly RoundTold[];
  /** "liner: 12.4 ± 0.8 µm a pass, learned in this job". */
  readonly removal: readonly string[];
  readonly before?: PrintTold;
  readonly after?: PrintTold;
  readonly bearing: string;
  readonly setups: readonly SetupUsed[];
  readonly cautions: readonly string[];
  /** Sweeps of the first and last round, for drawing. */
  readonly sweeps: readonly SweepTold[];
  /** Parts as the machine will make them now; absent where nothing is known of any. */
  readonly parts?: PartsTold;
  readonly entries: number;
  /** Photos that were read, by their hash, oldest first. */
  readonly photos: readonly { readonly hash: string; readonly pad: string; readonly round: number }[];
}

const months = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

/** The day of an ISO time, as paper has it: "25 Nov 2031". */
export function dayText(at: string): string {
  const [year, month, day] = at.slice(0, 10).split('-');
  return `${Number(day)} ${months[Number(month) - 1]} ${year}`;
}

function featuresFound(job: Job, history: RoundHistory, system: UnitSystem): string[] {
  return history.features.map((known) => {
    const words = job.plan.words.find((one) => one.feature === known.name);
    const isTurn = job.plan.features.some((one) => one.name === known.name && one.kind === 'turn');
    const sd = { sd: known.sd };
    const said = isTurn
      ? saySlope(known.value, system, { ...sd, ...(words ? { span_mm: words.span_mm } : {}) })
      : sayDeviation(known.value, system, sd);
    const way = said.sign === '' ? undefined : known.value < 0 ? words?.minus : words?.plus;
    return `${known.name} ${said.text}${way === undefined ? '' : `, ${way}`}`;
  });
}

function scrapedText(job: Job, record: RoundRecord): string | undefined {
  const scraped = scrapedIn(job.plan, record);
  if (!scraped) return undefined;
  const passes = Object.values(scraped.passes)
    .flat()
    .filter((one) => one > 0);
  if (passes.length === 0) return undefined;
  const number = (one: number): string => one.toFixed(Number.isInteger(one) ? 0 : 1);
  const least = Math.min(...passes);
  const most = Math.max(...passes);
  const range =
    least === most ? counted(least, 'pass', 'passes') : `${number(least)} to ${number(most)} passes`;
  return `${scraped.spot ? 'blue only, ' : ''}${counted(passes.length, 'zone')}, ${range} each`;
}

function printTold(job: Job, round: number): PrintTold | undefined {
  const share = roundRecord(job.live, round).print?.share;
  if (!share || Object.keys(share).length === 0) return undefined;
  const zones = job.plan.slide.pads.flatMap((pad) =>
    (share[pad.name] ?? []).map((one) => ({ one, area: (pad.length_mm * pad.width_mm) / pad.zones })),
  );
  const area = zones.reduce((sum, zone) => sum + zone.area, 0);
  const mean = zones.reduce((sum, zone) => sum + zone.one * zone.area, 0) / area;
  const least = Math.min(...zones.map((zone) => zone.one));
  return {
    round,
    share,
    text: `${percent(mean)} of the pads’ area took blue, thinnest zone ${percent(least)}`,
  };
}

function setupUsed(job: Job, setup: Setup, system: UnitSystem): SetupUsed | undefined {
  const taken = Array.from(
    { length: job.round },
    (_, k) => roundRecord(job.live, k + 1).taken[setup.id] ?? [],
  ).flat();
  if (taken.length === 0) return undefined;
  const size = (um: number): string => sayDeviation(um, system, { signed: false, rough: true }).text;
  const fall = (urad: number): string => saySlope(urad, system, { signed: false, rough: true }).text;
  const doubt =
    setup.kind === 'sweep'
      ? `each reading ±\u202f${size(2 * setup.reading_sd_um)}; the reference face ±\u202f${fall(2 * setup.face_slope_sd_urad)}`
      : setup.kind === 'level'
        ? `each reading ±\u202f${fall(2 * setup.sd_urad)}`
        : `each reading ±\u202f${size(2 * setup.sd_um)}`;
  const turned = taken.filter((one) => one.record.turned_over).length;
  const bars = taken.filter((one) => one.bar).length;
  const across = taken.filter((one) => one.record.other_side).length;
  const warmth = taken.flatMap((one) => one.record.temperature_C ?? []);
  const supports = [...new Set(taken.flatMap((one) => one.record.support ?? []))];
  const parts = [
    `rides ${setup.rides_words}`,
    `Touches ${setup.touches_words}`,
    `Plus: ${setup.plus_words}`,
    `Taken ${counted(taken.length, 'time')}${turned ? `, ${turned} of them with the reference turned over` : ''}${bars ? `, ${bars} of them a bar read at two places and turned half round, its sag taken out` : ''}${across ? `, ${across} of them from the other side, signs read accordingly` : ''}; ${doubt}.`,
    ...(warmth.length
      ? [`Temperature ${Math.min(...warmth).toFixed(1)} to ${Math.max(...warmth).toFixed(1)} °C.`]
      : []),
    ...(supports.length ? [`Supported ${supports.join('; ')}.`] : []),
  ];
  return { name: setup.name, text: parts.join(' ') };
}

const bearingWords = (answer: JobAnswer): string => {
  if (!answer.steer?.ok) return 'Bearing: not known.';
  const { verdict, share, least_zone } = answer.steer.plan.bearing;
  if (verdict === 'not printed') return 'Bearing: not printed.';
  return `Bearing ${verdict}: ${percent(share ?? 0)} of the pads’ area takes blue, thinnest zone ${percent(least_zone ?? 0)}.`;
};

/** What a job tells whoever keeps its chart. */
export function jobAccount(job: Job, answer: JobAnswer, system: UnitSystem): JobAccount {
  const records = Array.from({ length: job.round }, (_, k) => roundRecord(job.live, k + 1));
  const parts = partsTold(job, answer, system);
  const printed = records.flatMap((record) => printTold(job, record.round) ?? []);
  const [before] = printed;
  const after = printed.length > 1 ? printed.at(-1) : undefined;
  const dated = (round: number): string | undefined =>
    job.live.find((entry) => 'round' in entry && entry.round === round)?.at;
  return {
    part: job.plan.slide.name,
    rounds: answer.rounds.map((history) => {
      const at = dated(history.round);
      const scraped = scrapedText(job, records[history.round - 1]!);
      return {
        round: history.round,
        ...(at === undefined ? {} : { on: dayText(at) }),
        found: featuresFound(job, history, system),
        ...(scraped === undefined ? {} : { scraped }),
      };
    }),
    removal: (answer.rounds.at(-1)?.removal ?? []).map(
      ({ material, um, sd_um }) =>
        `${material}: ${sayDeviation(um, system, { signed: false, sd: sd_um }).text} a pass`,
    ),
    ...(before ? { before } : {}),
    ...(after ? { after } : {}),
    bearing: bearingWords(answer),
    setups: job.plan.setups.flatMap((setup) => setupUsed(job, setup, system) ?? []),
    cautions: job.plan.cautions,
    sweeps: sweepsTold(job, system),
    ...(parts ? { parts } : {}),
    entries: job.live.length,
    photos: records.flatMap((record) =>
      record.photos.map((one) => ({ hash: one.photo, pad: one.pad, round: record.round })),
    ),
  };
}
