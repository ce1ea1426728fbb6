import { rise } from '../body/displacement.ts';
import { edgeBend } from '../kit/edge-bend.ts';
import { type Causes, formCauses, heightCauses, scaleCause, stepCauses } from './causes.ts';
import { heightsFromAngles } from './heights-from-angles.ts';
import type { AnglesLine, HeightsLine, LineInput } from './line-input.ts';
import { endpointDepartures } from './reference-lines.ts';
import { type ThereAndBack, thereAndBack, widening } from './there-and-back.ts';

/** A way's profile as it was taken, before any line is laid through it. */
export interface Profile {
  readonly stations_mm: readonly number[];
  /** Plus: up, or toward the back. */
  readonly heights_um: readonly number[];
  /** Left out when nothing is known of the doubt. */
  readonly causes?: Causes;
  readonly runs?: ThereAndBack;
  /** How many times larger than stated the scatter of the two runs is taken; 1 when it agrees. */
  readonly widened: number;
  /** How the straightedge itself bends at the stations by its weight and by warmth, µm, plus up; it was added to what was read. */
  readonly edge_bend?: { readonly um: readonly number[]; readonly sd_um: readonly number[] };
  /** The straightedge's own form against its ends, when it was turned over, with the sd at each station. */
  readonly reference?: { readonly form_um: readonly number[]; readonly sd_um?: readonly number[] };
}

/** Readings, out and back or turned over, as heights with all that makes them doubtful. */
export const profileOf = (input: LineInput): Profile =>
  input.kind === 'angles' ? fromAngles(input) : fromHeights(input);

/** Root of the sum of squares of what is stated; nothing when nothing is, since no reading is without doubt. */
export function together(...sds: readonly (number | undefined)[]): number | undefined {
  const stated = sds.filter((sd) => sd !== undefined && sd > 0) as number[];
  return stated.length ? Math.hypot(...stated) : undefined;
}

/** One reading's sd: as stated, wider when two runs scatter more than that; as the runs show it when nothing is stated. */
function readingSd(stated: number | undefined, runs: ThereAndBack | undefined) {
  if (!runs) return { sd: stated, widened: 1 };
  if (stated === undefined) return { sd: runs.mean.length > 2 ? runs.scatter : undefined, widened: 1 };
  const widened = widening(runs, stated);
  return { sd: stated * widened, widened };
}

function fromAngles(input: AnglesLine): Profile {
  const { angles_urad, step_mm, return_urad } = input;
  const runs = return_urad && thereAndBack(angles_urad, return_urad);
  const heights_um = heightsFromAngles(runs ? runs.mean : angles_urad, step_mm);
  const stations_mm = heights_um.map((_, i) => i * step_mm);
  const { sd, widened } = readingSd(together(input.reading_sd_urad, input.repeatability_sd_urad), runs);
  const each = sd === undefined ? undefined : sd / Math.sqrt(runs ? 2 : 1);
  const causes = each === undefined ? undefined : stepCauses(rise(each, step_mm), angles_urad.length);
  return {
    stations_mm,
    heights_um,
    widened,
    ...(runs ? { runs } : {}),
    ...withCauses(input, stations_mm, heights_um, causes),
  };
}

function fromHeights(input: HeightsLine): Profile {
  const { stations_mm, return_um, reversed_um } = input;
  const side = input.plus === 'hollow' ? -1 : 1;
  const first = input.heights_um.map((reading) => side * reading);
  const runs =
    return_um &&
    thereAndBack(
      first,
      return_um.map((reading) => side * reading),
    );
  const turned = reversed_um?.map((reading) => side * reading);
  // I₁ = way + edge, I₂ = way − edge.
  const half = (sign: 1 | -1) => first.map((reading, i) => (reading + sign * turned![i]!) / 2);
  const read_um = runs ? runs.mean : turned ? half(1) : first;
  const bend = input.straightedge && edgeBend(input.straightedge, stations_mm);
  // What was read is the way less the edge.
  const heights_um = bend ? read_um.map((um, i) => um + bend.um[i]!) : read_um;
  const { sd, widened } = readingSd(together(input.reading_sd_um, input.repeatability_sd_um), runs);
  const each = sd === undefined ? undefined : sd / Math.sqrt(runs || turned ? 2 : 1);
  const noise = each === undefined ? undefined : heightCauses(each, first.length);
  const form = input.reference_sd_um && !turned ? formCauses(input.reference_sd_um, stations_mm) : [];
  // How far the bend is known says nothing of the readings: alone it is no doubt of the line.
  const bent = noise || form.length ? (bend?.causes_um ?? []).map((column) => Float64Array.from(column)) : [];
  const causes = noise || form.length ? [...(noise ?? []), ...form, ...bent] : undefined;
  return {
    stations_mm,
    heights_um,
    widened,
    ...(runs ? { runs } : {}),
    ...(bend
      ? {
          edge_bend: {
            um: bend.um,
            sd_um: bend.um.map((_, i) => Math.hypot(...bend.causes_um.map((cause) => cause[i]!))),
          },
        }
      : {}),
    ...(turned ? { reference: referenceForm(stations_mm, half(-1), each) } : {}),
    ...withCauses(input, stations_mm, heights_um, causes),
  };
}

function referenceForm(
  stations_mm: readonly number[],
  edge_um: readonly number[],
  sd_um: number | undefined,
) {
  const form_um = endpointDepartures(stations_mm, edge_um);
  if (sd_um === undefined) return { form_um };
  const start = stations_mm[0]!;
  const length = stations_mm.at(-1)! - start;
  // A departure is a height less the two ends by their shares; at an end itself nothing is left.
  const sds = stations_mm.map((at, i) => {
    const share = (at - start) / length;
    return i === 0 || share === 1 ? 0 : sd_um * Math.hypot(1, 1 - share, share);
  });
  return { form_um, sd_um: sds };
}

function withCauses(
  input: LineInput,
  stations_mm: readonly number[],
  heights_um: readonly number[],
  causes: Causes | undefined,
): { causes?: Causes } {
  const { scale_sd } = input;
  if (!scale_sd) return causes ? { causes } : {};
  const scale = scaleCause(scale_sd, endpointDepartures(stations_mm, heights_um));
  return { causes: [...(causes ?? []), scale] };
}
