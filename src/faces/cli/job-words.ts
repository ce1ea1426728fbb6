import type { Kept } from '../../shop/store.ts';
import { type Doors, refused } from './doors.ts';

/** Says that there is no such job and leaves with 2. */
export function noSuchJob(doors: Doors, id: string): never {
  refused(doors, `id: ${JSON.stringify(id)}; expected a job of this workshop (waywright job list)`);
}

/** `length=480` → ['length', 480]; what is no number stays text. */
export function dimension(doors: Doors, given: string): [string, number | string] {
  const at = given.indexOf('=');
  if (at < 1) {
    refused(doors, `--set: ${JSON.stringify(given)}; expected key=value, as length=480`);
  }
  const text = given.slice(at + 1).trim();
  const number = Number(text);
  return [given.slice(0, at).trim(), text !== '' && Number.isFinite(number) ? number : text];
}

/** Says what became of a job that was to be kept. */
export function sayKept(doors: Doors, id: string, kept: Kept, json: boolean | undefined, done: string): void {
  if (kept.kind !== 'kept') {
    refused(
      doors,
      `id: a job ${JSON.stringify(id)} with other entries is kept already; expected another id, or the same job`,
    );
  }
  const what = kept.again ? 'was kept already, the same to the letter' : done;
  doors.say(json ? JSON.stringify({ id, entries: kept.seq, again: kept.again }, null, 1) : `${id} ${what}`);
}
