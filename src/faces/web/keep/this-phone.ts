import { newId } from './outbox.ts';
import { phoneShelf, shelved } from './shelf.ts';

const key = 'waywright/this-phone';

/** A random mark of this browser, the same for as long as its storage is kept; says nothing of whose it is. */
export function thisPhone(): string {
  const known = shelved<string | undefined>(phoneShelf, key, undefined);
  if (known !== undefined) return known;
  const fresh = newId().slice(0, 8);
  try {
    phoneShelf.write(key, JSON.stringify(fresh));
  } catch {
    // A full phone is another phone with every entry: two hands are told of once too often, and nothing is lost.
  }
  return fresh;
}
