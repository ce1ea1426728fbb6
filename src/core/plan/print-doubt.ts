import { drawnOut, takeScraping } from '../estimate/scraping.ts';
import { seatedGapRow } from '../estimate/seat.ts';
import type { SlideEstimate } from '../estimate/slide-estimate.ts';
import { copyGaussian, varianceOf } from '../math/gaussian.ts';

/** From print to print the film is rolled out thicker or thinner by this share (common practice). */
export const filmScatter = 0.08;

/**
 * How well each zone's gap will be known once passes are made, µm, the film's own offset with it: what the estimate leaves open,
 * the doubt of the removal through the passes, and their scatter.
 * @param made  one a zone: passes, or for spotting passes × share that bears
 */
export function gapSdAfter(
  { model, known }: SlideEstimate,
  made: { readonly spot: boolean; readonly count: readonly number[] },
): number[] {
  const state = copyGaussian(known.state);
  takeScraping(model, state, drawnOut(model, { ...made, wider: 1 }));
  return model.zones.map((_, z) => {
    const row = seatedGapRow(model, known.settled, z);
    row[model.layout.offset] = 1;
    return Math.sqrt(Math.max(0, varianceOf(state, row)));
  });
}
