import type { OutboxState } from '../keep/outbox.ts';
import { Mark } from './mark.tsx';

/** 24 h clock of an ISO time. */
export const clock = (iso: string): string =>
  new Date(iso).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });

/** "25 Nov" of an ISO time. */
export const dayMonth = (iso: string): string =>
  new Date(iso).toLocaleDateString('en-GB', { day: 'numeric', month: 'short' });

/**
 * Whether what was entered is kept, at the top right, always. `last` is the time of the job's newest entry in the shop's
 * file. Announced politely, so that an eye on the metal need not look.
 */
export function Kept(props: {
  readonly box: OutboxState;
  readonly job?: string | undefined;
  readonly last?: string | undefined;
}) {
  const { box, job, last } = props;
  const waiting = box.waiting.length;
  if (box.trouble !== undefined)
    return (
      <output className="kept bad">
        <Mark name="caution" size={18} />
        Not kept: {box.trouble}
      </output>
    );
  if (box.refused.length > 0)
    return (
      <output className="kept bad">
        <Mark name="caution" size={18} />
        {box.refused.length === 1 ? '1 entry' : `${box.refused.length} entries`} refused
      </output>
    );
  if (waiting > 0)
    return (
      <output className="kept">
        <Mark name="waiting" size={18} />
        {waiting === 1 ? '1 entry' : `${waiting} entries`} on this phone
      </output>
    );
  const at = (job === undefined ? undefined : box.kept[job]) ?? last;
  return (
    <output className="kept">
      <Mark name="kept" size={18} />
      {at === undefined ? 'all kept' : `kept ${clock(at)}`}
    </output>
  );
}
