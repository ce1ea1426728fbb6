import { outbox } from '../keep/jobs.ts';
import type { OutboxState } from '../keep/outbox.ts';
import { Wrong } from './notice.tsx';

/** Entries the shop's file would not take, each with why; they stay on this device until they are let go. */
export const RefusedParcels = ({ refused }: { readonly refused: OutboxState['refused'] }) =>
  refused.map((parcel) => (
    <Wrong key={parcel.entry.id} role="alert">
      Not taken by the shop’s file: {parcel.why}. It is still on this phone.{' '}
      <button type="button" className="third" onClick={() => outbox.letGo(parcel.entry.id)}>
        Let it go
      </button>
    </Wrong>
  ));
