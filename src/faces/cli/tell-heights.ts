import type { HeightsAnswer } from '../../shop/order/heights.ts';
import { heightsWorking } from '../../shop/order/heights-working.ts';
import type { Doors } from './doors.ts';
import { heightsText } from './heights-text.ts';
import { exitCodes, Leave } from './leave.ts';
import { type Told, tell } from './working-text.ts';

/** Tells heights, of a file or of a job's machine. @throws Leave with 3 where a liner cannot be */
export function tellHeights(
  doors: Doors,
  asked: Told & { readonly inch?: boolean },
  answer: HeightsAnswer | { readonly ok: false; readonly text: string },
): void {
  if (!answer.ok) {
    doors.complain(`no answer: ${answer.text}`);
    throw new Leave(exitCodes.noAnswer);
  }
  const text = (one: HeightsAnswer) => heightsText(one, asked.inch ? 'inch' : 'metric');
  tell(doors, asked, answer, text, () => heightsWorking(answer));
}
