/** @typedef {{ median: number, worst: number, runs: number }} Times  milliseconds */

/**
 * Runs a piece of work until its median is steady: a few runs to warm up, then at least `least` runs and about `seconds`.
 * @returns {Promise<Times>}
 */
export async function timed(work, { least = 20, seconds = 1, warm = 5 } = {}) {
  for (let k = 0; k < warm; k++) await work();
  const times = [];
  const end = performance.now() + 1000 * seconds;
  while (times.length < least || performance.now() < end) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  return summary(times);
}

/** @returns {Times} */
export function summary(times) {
  const sorted = [...times].sort((a, b) => a - b);
  return { median: sorted[sorted.length >> 1], worst: sorted.at(-1), runs: times.length };
}
