import { poseSize } from '../body/displacement.ts';
import { zonesOf } from '../body/slide.ts';
import { foundation, heldForce, poseOf } from '../rest/foundation.ts';
import { wrenchOf } from '../rest/load.ts';
import { settler } from '../rest/settler.ts';
import { heightAt } from '../site/bed.ts';
import type { NoRest, SiteInput } from '../site/site.ts';
import type { Travel } from './travel.ts';

/** A slide on a surveyed bed: as `site` is asked, printed in one place. */
export interface OnBed
  extends Pick<SiteInput, 'slide' | 'bed' | 'load' | 'stiffness_N_per_mm3' | 'positions_mm'> {
  /** Where the slide was printed: where its middle stood. */
  readonly printed_mm: number;
  /** How surely each height of the survey is known, µm, each by itself; left out: surely. */
  readonly height_sd_um?: number;
}

/** A height is moved by this share of how far the zones are pressed in: so little that the same zones go on carrying. */
const step = 0.02;

/**
 * Poses along a worn bed of a slide that was printed in one place, against its rest there: the poses behind `site`.
 * Doubt: each surveyed height is moved a little and all rests are found anew (first order: the zones that carry now go on carrying).
 * @throws RangeError  a pad reaches beyond the survey
 */
export function travelOnBed(on: OnBed): Travel | NoRest {
  const { slide, bed, positions_mm, printed_mm } = on;
  const zones = zonesOf(slide);
  const along = 'xyz'.indexOf(slide.free);
  const ground = foundation(slide, on.stiffness_N_per_mm3);
  const rest = settler(ground, heldForce(ground, wrenchOf(on.load)));
  const ways = new Map(bed.ways.map((way) => [way.pad, [...way.height_um]]));
  const gap = new Float64Array(zones.length);
  const formAt = (place: number): Float64Array =>
    Float64Array.from(zones, (zone) =>
      heightAt(bed.stations_mm, ways.get(zone.pad.name)!, place + zone.centre_mm[along]!),
    );
  gap.fill(0);
  const home = rest(gap);
  if (!home) return { ok: false, printed_mm, at_mm: printed_mm };
  const homePose = poseOf(ground, home);

  /** All 6n pose numbers, or the place where there is no rest. */
  const posesNow = (): Float64Array | number => {
    const there = formAt(printed_mm);
    const all = new Float64Array(poseSize * positions_mm.length);
    for (const [p, position] of positions_mm.entries()) {
      const here = formAt(position);
      for (let z = 0; z < zones.length; z++) gap[z] = there[z]! - here[z]!;
      const c = rest(gap);
      if (!c) return position;
      poseOf(ground, c).forEach((part, j) => {
        all[p * poseSize + j] = part - homePose[j]!;
      });
    }
    return all;
  };
  const base = posesNow();
  if (typeof base === 'number') return { ok: false, printed_mm, at_mm: base };
  const travel: Travel = {
    name: slide.name,
    along: slide.free,
    stations_mm: positions_mm,
    poses: positions_mm.map(
      (_, p) => [...base.subarray(p * poseSize, (p + 1) * poseSize)] as unknown as Travel['poses'][number],
    ),
  };
  const sd_um = on.height_sd_um ?? 0;
  if (sd_um === 0) return travel;
  const step_um = (step * on.load.force_N) / ground.spring_N_per_um.reduce((sum, one) => sum + one, 0);
  const sources = bed.ways.flatMap((way) => {
    const heights = ways.get(way.pad)!;
    return bed.stations_mm.flatMap((_, i) => {
      heights[i]! += step_um;
      const moved = posesNow();
      heights[i]! -= step_um;
      if (typeof moved === 'number') return [];
      const source = moved.map((part, j) => ((part - base[j]!) * sd_um) / step_um);
      return source.some((part) => part !== 0) ? [source] : [];
    });
  });
  return { ...travel, doubt: { sources } };
}
