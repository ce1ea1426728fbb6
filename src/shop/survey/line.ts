import type { OtherUnit } from '../../contract/pasted-table.ts';
import { type Verdict, verdict } from '../../core/prove/verdict.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { surveyLine } from '../../core/survey/line.ts';
import type { LineInput } from '../../core/survey/line-input.ts';
import { type Drawn, type Draws, lineMonteCarlo } from '../../core/survey/monte-carlo.ts';
import type { StraightnessSds, Widths } from '../../core/survey/reference-lines.ts';
import { type LineClosure, lineClosure } from './line-closure.ts';
import { lineWarnings, type SurveyWarning } from './line-warnings.ts';

/** A point that holds the minimum zone. */
export interface LineContact {
  readonly index: number;
  readonly station_mm: number;
  readonly side: 'high' | 'low';
  readonly share: number;
}

/** What `line` answers; see docs/contract.md. */
export interface LineAnswer {
  readonly name?: string;
  readonly kind: LineInput['kind'];
  readonly direction: 'vertical' | 'horizontal';
  readonly stations_mm: readonly number[];
  readonly heights_um: readonly number[];
  readonly endpoint_um: readonly number[];
  readonly least_squares_um: readonly number[];
  readonly minimum_zone_um: readonly number[];
  readonly straightness_um: Widths;
  /** One sd of each; left out when neither readings nor runs say how good they are. */
  readonly sd?: StraightnessSds;
  readonly contacts: readonly LineContact[];
  readonly closure?: LineClosure;
  readonly reference?: { readonly form_um: readonly number[]; readonly sd_um?: readonly number[] };
  /** The straightedge's own sag and bow at the stations, which were taken out; plus up. */
  readonly edge_bend_um?: readonly number[];
  /** One sd of each: how well its stiffness, its expansion and its warmth are known. */
  readonly edge_bend_sd_um?: readonly number[];
  readonly wear?: {
    readonly wear_um: readonly number[];
    readonly sd_um?: readonly number[];
    readonly deepest: { readonly station_mm: number; readonly um: number; readonly sd_um?: number };
  };
  /** The limit against the minimum zone; only where a limit is given and a doubt is known. */
  readonly decision?: { readonly limit_um: number; readonly verdict: Verdict; readonly over_um: number };
  /** The three widths when the readings are drawn anew; only on request and where a doubt is known. */
  readonly monte_carlo?: Draws & Readonly<Record<keyof Widths, Drawn>>;
  readonly warnings: readonly SurveyWarning[];
}

/** Where the readings of a pasted table stood. */
export interface TablePlaces {
  readonly lines: readonly number[];
  readonly otherUnits: readonly OtherUnit[];
}

/**
 * Straightness of a way, with its doubt, closure, wear, decision, and every slip that the readings hint at.
 * @param system  units of the warnings
 */
export function line(
  input: LineInput,
  table?: TablePlaces,
  draws?: Draws,
  system: UnitSystem = 'metric',
): LineAnswer {
  const found = surveyLine(input);
  const { stations_mm, heights_um, runs, reference, edge_bend } = found.profile;
  const closure = runs && lineClosure(input, found.profile);
  const station = (index: number) => stations_mm[index]!;
  const { wear } = found;
  const drawn = draws && lineMonteCarlo(input, draws);
  return {
    ...(input.name === undefined ? {} : { name: input.name }),
    kind: input.kind,
    direction: input.direction ?? 'vertical',
    stations_mm,
    heights_um,
    endpoint_um: found.endpoint_um,
    least_squares_um: found.least_squares_um,
    minimum_zone_um: found.minimum_zone_um,
    straightness_um: found.straightness_um,
    ...(found.sd ? { sd: found.sd } : {}),
    contacts: found.contacts.map((one) => ({ ...one, station_mm: station(one.index) })),
    ...(closure ? { closure } : {}),
    ...(reference ? { reference } : {}),
    ...(edge_bend ? { edge_bend_um: edge_bend.um, edge_bend_sd_um: edge_bend.sd_um } : {}),
    ...(wear
      ? {
          wear: {
            wear_um: wear.wear_um,
            ...(wear.sd_um ? { sd_um: wear.sd_um } : {}),
            deepest: {
              station_mm: station(wear.deepest.index),
              um: wear.deepest.um,
              ...(wear.deepest.sd_um === undefined ? {} : { sd_um: wear.deepest.sd_um }),
            },
          },
        }
      : {}),
    ...decisionOf(input.limit_um, found.straightness_um.minimum_zone, found.sd?.straightness_um.minimum_zone),
    ...(draws && drawn ? { monte_carlo: { ...draws, ...drawn } } : {}),
    warnings: lineWarnings(input, found, closure, table, system),
  };
}

/** A width has no lower limit: it is within when width and doubt stay below the limit. */
export function decisionOf(limit_um: number | undefined, width_um: number, sd_um: number | undefined) {
  if (limit_um === undefined || sd_um === undefined) return {};
  const judged = verdict(width_um, sd_um, -Infinity, limit_um);
  return { decision: { limit_um, verdict: judged.verdict, over_um: judged.over } };
}
