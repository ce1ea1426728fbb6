/**
 * Writes that come while others are on their way to the disk go there together: one wait for the disk for all of them, and each is
 * answered when it is there. Where a common write fails, each is tried alone, so that one that cannot be kept keeps back no other.
 * @param write  all of them or none, answers in the same order
 */
export function gathered<I, O>(write: (all: readonly I[]) => Promise<readonly O[]>): (one: I) => Promise<O> {
  interface Waiting {
    readonly one: I;
    readonly done: (answer: O) => void;
    readonly failed: (why: unknown) => void;
  }
  let waiting: Waiting[] = [];
  const alone = async ({ one, done, failed }: Waiting): Promise<void> => {
    try {
      done((await write([one]))[0]!);
    } catch (failure) {
      failed(failure);
    }
  };
  const flush = async (): Promise<void> => {
    const now = waiting;
    waiting = [];
    if (now.length === 1) return alone(now[0]!);
    let answers: readonly O[];
    try {
      answers = await write(now.map(({ one }) => one));
    } catch {
      for (const each of now) await alone(each);
      return;
    }
    now.forEach(({ done }, k) => {
      done(answers[k]!);
    });
  };
  return (one) =>
    new Promise((done, failed) => {
      waiting.push({ one, done, failed });
      // After all that has arrived by now has been read.
      if (waiting.length === 1) setImmediate(() => void flush());
    });
}
