import type { Slide } from '../../../core/body/slide.ts';
import type { MapShow } from '../../../draw/scrape-map.ts';

/** A map that only numbers its zones, from the minus end of the travel: for looking at how the part lies. */
export const numberedZones = (slide: Slide): MapShow => ({
  kind: 'heights',
  values: Object.fromEntries(slide.pads.map((pad) => [pad.name, Array<number>(pad.zones).fill(0)])),
  texts: Object.fromEntries(
    slide.pads.map((pad) => [pad.name, Array.from({ length: pad.zones }, (_, zone) => String(zone + 1))]),
  ),
});
