import type { PrintDraft } from '../../../shop/measure/blue.ts';
import { draftKey } from '../keep/draft.ts';
import { phoneShelf, shelved } from '../keep/shelf.ts';

/** Half-tapped words that a photo now replaces leave the Print screen's draft; a tap after the photo counts again. */
export function dropTaps(id: string, round: number, pad: string, shares: readonly (number | null)[]): void {
  const key = draftKey(id, round, 'print');
  const draft = shelved<PrintDraft>(phoneShelf, key, {});
  const tapped = draft[pad];
  if (!tapped) return;
  const left = tapped.map((blue, zone) => (typeof shares[zone] === 'number' ? null : blue));
  phoneShelf.write(key, JSON.stringify({ ...draft, [pad]: left }));
}
