/**
 * Where blue covers a half of what an element shows, on the scale from bare surface to full film.
 *
 * Blur mixes light, not its logarithm. At the edge of film that lets the share q of the bare surface's light through an
 * element shows (1 + q)/2 of it, which is log((1 + q)/2) / log q of the way to full film in the log: 0.29 where film is
 * dark (q 0.15), 0.42 where a veil of glare or a dark base leaves it little contrast (q 0.5). One cut for all of these
 * would read too much wherever contrast is low.
 *
 * @param q  light of film over light of bare surface, above 0 and below 1
 */
export const halfCover = (q: number): number => Math.log((1 + q) / 2) / Math.log(q);

/** Prints are mostly like this; the reader's cuts are meant for it. */
const usual_q = 0.215;
/** Thin blue beside an edge stands out more under a veil as well: a fifth more than half cover alone. */
const more = 1.2;
const darkest_q = 0.02;
const palest_q = 0.98;
/** Below −1 the scale would turn back before full film. */
const leastBend = -0.66;

/**
 * How far the scale from bare (0) to full film (1) is to be bent, see `bent`, so that half cover comes to lie where it lies
 * on a usual print.
 *
 * @param q  light of film over light of bare surface nearby
 */
export function bendOf(q: number): number {
  const usual = halfCover(usual_q);
  const here = usual + more * (halfCover(Math.max(darkest_q, Math.min(palest_q, q))) - usual);
  return Math.max(leastBend, (here - usual) / (here * (1 - here)));
}

/** One value of the scale, bent: 0 and 1 stay, and so does what is beyond full film. */
export function bent(share: number, bend: number): number {
  // What share is below 1, at most 1 and at least 0. Without branches: on bare surface shares lie to both sides of 0 at random,
  // and a processor that guesses wrong waits.
  const short = 1 - 0.5 * (share + Math.abs(share));
  return share - bend * share * 0.5 * (short + Math.abs(short));
}
