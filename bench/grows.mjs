import { timed } from './clock.mjs';

/**
 * How a path grows with its work: every row is held against the smallest of its kind, timed in the same run, so that the ratio
 * is what so much more work costs.
 * @param unit    what is counted, in the plural
 * @param workOf  size → the work, made ready untimed
 * @param how     as {@link timed} is told
 */
export async function grows(name, unit, sizes, workOf, how) {
  const rows = [];
  const counted = (size) => `${size} ${size === 1 ? unit.replace(/s$/, '') : unit}`;
  let least;
  for (const size of sizes) {
    const times = await timed(await workOf(size), { least: 5, warm: 2, ...how });
    least ??= { name: counted(sizes[0]), times };
    rows.push({ what: `${name}, ${counted(size)}`, times, reference: least });
  }
  return rows;
}
