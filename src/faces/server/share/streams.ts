/** Open event streams by whose they are, so that a device that is removed loses them at once. */
export interface Streams {
  /** Enters a stream; false when this one has too many open. @returns how to take it out again */
  readonly add: (whose: string, end: () => void) => (() => void) | undefined;
  /** Ends every stream of one device. */
  readonly end: (whose: string) => void;
  readonly endAll: () => void;
}

/** A phone with a few pages open; browsers themselves stop at six. */
const mostEach = 12;
const mostOfAll = 400;

export function openStreams(): Streams {
  const all = new Map<() => void, string>();
  const endThose = (is: (whose: string) => boolean) => {
    for (const [end, whose] of [...all]) if (is(whose)) end();
  };
  return {
    add: (whose, end) => {
      const mine = [...all.values()].filter((one) => one === whose).length;
      if (all.size >= mostOfAll || mine >= mostEach) return undefined;
      all.set(end, whose);
      return () => void all.delete(end);
    },
    end: (whose) => endThose((one) => one === whose),
    endAll: () => endThose(() => true),
  };
}
