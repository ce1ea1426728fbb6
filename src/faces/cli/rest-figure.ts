import type { RestAsk } from '../../contract/rest.ts';
import { scrapeMap } from '../../draw/scrape-map.ts';
import type { Shape } from '../../draw/shape.ts';
import type { Rested } from '../../shop/rest.ts';

/** The blue to expect on the pads, as the part lies when it was turned over end for end. */
export const blueToExpect = ({ slide }: RestAsk, rested: Rested): Shape =>
  scrapeMap({
    title: `The blue to expect on ${slide.name}`,
    slide,
    places: {
      minus_end: `minus end of ${slide.free}`,
      plus_end: `plus end of ${slide.free}`,
      minus_side: 'minus side',
      plus_side: 'plus side',
      travel: slide.free,
    },
    turnedOver: 'end over end',
    width: 716,
    show: { kind: 'blue', share: rested.expected_print.share, round: 1 },
  });
