import { rise } from '../body/displacement.ts';
import type { SitePlace } from './site.ts';

/** What a place of printing does to parts, over the work done: rms. */
export interface SiteParts {
  /** Turned diameters wander by this, µm: twice the tool's movement across. */
  readonly diameter_rms_um: number;
  /** Faces are out of square by this from rim to centre, µm. */
  readonly facing_rms_um: number;
  /** Both together, µm. */
  readonly both_um: number;
}

/** @param facing_mm  radius of the faces that the user turns */
export function siteParts(
  place: Pick<SitePlace, 'tool_across_rms_um' | 'yaw_rms_urad'>,
  facing_mm: number,
): SiteParts {
  const diameter_rms_um = 2 * place.tool_across_rms_um;
  const facing_rms_um = rise(place.yaw_rms_urad, facing_mm);
  return { diameter_rms_um, facing_rms_um, both_um: Math.hypot(diameter_rms_um, facing_rms_um) };
}

/** What the user lets a place of printing cost, rms over the work. */
export interface SiteLimits {
  /** Wander of turned diameters, µm. */
  readonly diameter_um: number;
  /** Lean of faces from rim to centre, µm. */
  readonly facing_um: number;
}
