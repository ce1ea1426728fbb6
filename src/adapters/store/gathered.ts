import { Fault } from '../../shop/store.ts';

/** So many go to the disk together at most; the rest goes next. */
const mostTogether = 256;

/**
 * Writes that come while others are on their way to the disk go there together: one wait for the disk for all of them, and each is
 * answered when it is there. One such flight at a time. Where a common write fails, each is tried alone, so that one that cannot be
 * kept keeps back no other; unless the disk or the database itself failed, which all of them are told then.
 * @param write  all of them or none, answers in the same order
 */
export function gathered<I, O>(write: (all: readonly I[]) => Promise<readonly O[]>): (one: I) => Promise<O> {
  interface Waiting {
    readonly one: I;
    readonly done: (answer: O) => void;
    readonly failed: (why: unknown) => void;
  }
  let waiting: Waiting[] = [];
  let underWay = false;
  const alone = async ({ one, done, failed }: Waiting): Promise<void> => {
    try {
      done((await write([one]))[0]!);
    } catch (failure) {
      failed(failure);
    }
  };
  const together = async (now: readonly Waiting[]): Promise<void> => {
    if (now.length === 1) return alone(now[0]!);
    let answers: readonly O[];
    try {
      answers = await write(now.map(({ one }) => one));
    } catch (failure) {
      if (failure instanceof Fault) for (const { failed } of now) failed(failure);
      else for (const each of now) await alone(each);
      return;
    }
    now.forEach(({ done }, k) => {
      done(answers[k]!);
    });
  };
  const fly = async (): Promise<void> => {
    while (waiting.length > 0) {
      const now = waiting.slice(0, mostTogether);
      waiting = waiting.slice(mostTogether);
      await together(now);
    }
    underWay = false;
  };
  return (one) =>
    new Promise((done, failed) => {
      waiting.push({ one, done, failed });
      if (underWay) return;
      underWay = true;
      // After all that has arrived by now has been read.
      setImmediate(() => void fly());
    });
}
