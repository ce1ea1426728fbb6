import { useCallback, useState } from 'react';
import { phoneShelf, shelved } from './shelf.ts';

/** Where something half-written is kept on this phone: a job, a round, and the card it belongs to. */
export const draftKey = (job: string, ...place: (string | number)[]): string =>
  `waywright/draft/${[job, ...place].map(encodeURIComponent).join('/')}`;

/**
 * State that is on the phone's storage before the next key is pressed: a reload gives it back as it was typed.
 *
 * @returns the value, a setter, and `finish`, which drops the draft once its entry has been written
 */
export function useDraft<T>(key: string, start: T): readonly [T, (value: T) => void, () => void] {
  const [held, hold] = useState(() => ({ key, value: shelved(phoneShelf, key, start) }));
  const value = held.key === key ? held.value : shelved(phoneShelf, key, start);
  const set = useCallback(
    (next: T) => {
      hold({ key, value: next });
      try {
        phoneShelf.write(key, JSON.stringify(next));
      } catch {
        // No room on the phone: what was typed is still on the page, and the kept mark speaks when the entry is written.
      }
    },
    [key],
  );
  const finish = useCallback(() => phoneShelf.drop(key), [key]);
  return [value, set, finish];
}
