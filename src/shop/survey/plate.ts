import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { Contact } from '../../core/survey/line-zone.ts';
import { type Drawn, type Draws, plateMonteCarlo } from '../../core/survey/monte-carlo.ts';
import { type Flatness, type SteppedDepth, surveyPlate } from '../../core/survey/plate.ts';
import type { PlateInput, PlatePoint } from '../../core/survey/plate-input.ts';
import type { Closure } from '../../core/survey/surface.ts';
import { decisionOf, type LineAnswer, type TablePlaces } from './line.ts';
import type { SurveyWarning } from './line-warnings.ts';
import { plateWarnings } from './plate-warnings.ts';

/** A point that holds the minimum zone. */
export interface PlateContact extends Contact {
  readonly x_mm: number;
  readonly y_mm: number;
}

/** What `plate` answers; see docs/contract.md. */
export interface PlateAnswer {
  readonly name?: string;
  readonly kind: PlateInput['kind'];
  /** As given, or as they come out of the angles. */
  readonly points: readonly PlatePoint[];
  readonly flatness_um: Flatness;
  /** One sd of each; left out when nothing is known of the doubt. */
  readonly sd?: Flatness & { readonly residual_um: readonly number[] };
  /** From the least-squares plane. */
  readonly residual_um: readonly number[];
  /** Above the lower plane of the minimum zone: what must come off to be flat. */
  readonly depth_um: readonly number[];
  readonly stepped?: SteppedDepth;
  /** "3-1": three highs and one low hold the zone. */
  readonly pattern: string;
  readonly contacts: readonly PlateContact[];
  /** Slopes of the minimum zone, µrad. */
  readonly slope_urad: { readonly x: number; readonly y: number };
  readonly closures: readonly Closure[];
  readonly decision?: NonNullable<LineAnswer['decision']>;
  /** Both widths when the readings are drawn anew; only on request and where a doubt is known. */
  readonly monte_carlo?: Draws & Readonly<Record<keyof Flatness, Drawn>>;
  readonly warnings: readonly SurveyWarning[];
}

/**
 * Flatness of a surface, with its doubt, what holds it, where to scrape, closing errors and slips that the readings hint at.
 * @param system  units of the warnings
 */
export function plate(
  input: PlateInput,
  table?: TablePlaces,
  draws?: Draws,
  system: UnitSystem = 'metric',
): PlateAnswer {
  const found = surveyPlate(input);
  const { surface, zone, sd_um } = found;
  const drawn = draws && plateMonteCarlo(input, draws);
  const highs = zone.contacts.filter((one) => one.side === 'high').length;
  return {
    ...(input.name === undefined ? {} : { name: input.name }),
    kind: input.kind,
    points: surface.x_mm.map((x_mm, i) => ({ x_mm, y_mm: surface.y_mm[i]!, z_um: surface.z_um[i]! })),
    flatness_um: found.flatness_um,
    ...(sd_um && found.residual_sd_um ? { sd: { ...sd_um, residual_um: found.residual_sd_um } } : {}),
    residual_um: found.residual_um,
    depth_um: found.depth_um,
    ...(found.stepped ? { stepped: found.stepped } : {}),
    pattern: `${highs}-${zone.contacts.length - highs}`,
    contacts: zone.contacts.map((one) => ({
      ...one,
      x_mm: surface.x_mm[one.index]!,
      y_mm: surface.y_mm[one.index]!,
    })),
    slope_urad: { x: zone.slope_x_urad, y: zone.slope_y_urad },
    closures: surface.closures,
    ...decisionOf(input.limit_um, found.flatness_um.minimum_zone, sd_um?.minimum_zone),
    ...(draws && drawn ? { monte_carlo: { ...draws, ...drawn } } : {}),
    warnings: plateWarnings(input, found, table, system),
  };
}
