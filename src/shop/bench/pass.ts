import type { ZoneAnswer } from '../../core/plan/answer.ts';

/** One pass of a plan: the zones that take it, 1 or 0 a zone by pad. */
export interface PlannedPass {
  /** From 1. */
  readonly pass: number;
  readonly zones: number;
  readonly byPad: Readonly<Record<string, readonly number[]>>;
}

/** The passes to make before measuring again: pass k goes over every zone that is to have k or more. */
export function passesOf(zones: readonly ZoneAnswer[]): PlannedPass[] {
  const most = Math.max(0, ...zones.map((zone) => zone.passes_now));
  return Array.from({ length: most }, (_, k) => {
    const byPad: Record<string, number[]> = {};
    for (const zone of zones) {
      byPad[zone.pad] ??= [];
      byPad[zone.pad]![zone.zone] = zone.passes_now > k ? 1 : 0;
    }
    return { pass: k + 1, zones: zones.filter((zone) => zone.passes_now > k).length, byPad };
  });
}

/** One number of each zone's answer, by pad and zone. */
export function zonesByPad(
  zones: readonly ZoneAnswer[],
  part: 'passes' | 'passes_now' | 'depth_um',
): Record<string, number[]> {
  const byPad: Record<string, number[]> = {};
  for (const zone of zones) {
    byPad[zone.pad] ??= [];
    byPad[zone.pad]![zone.zone] = zone[part];
  }
  return byPad;
}
