import type { Pad } from '../../../core/body/pad.ts';
import type { TakenPhoto } from '../../../core/ledger/round-record.ts';
import { agreementOf } from '../../../core/print/agreement.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import { agreementFigures, agreementSentence, zoneChanges } from '../../../shop/print/compare-words.ts';
import type { ShownReading } from '../../../shop/print/photo-reading.ts';
import { Caution } from '../frame/notice.tsx';
import { useReading } from './asked.ts';

/** Another photo of this round's print, read again with the same squares: whether both tell the same, by their doubts. */
export function SamePrint(props: {
  readonly taken: TakenPhoto;
  readonly pad: Pad;
  readonly reading: ShownReading;
  readonly minusEnd: string;
  readonly units: UnitSystem;
}) {
  const { taken, pad, reading, minusEnd, units } = props;
  const { data: before } = useReading({
    hash: taken.photo,
    corners: taken.corners,
    size: taken.size,
    cell_mm: reading.cell_mm === 25 ? 25 : 25.4,
    zones: pad.zones,
    ...(taken.exclusions?.length ? { exclusions: taken.exclusions } : {}),
  });
  const changes = zoneChanges(taken.shares, reading.zone_shares ?? []);
  const agreement = before && agreementOf(before, reading);
  const words = agreementSentence(changes, minusEnd, agreement);
  return (
    <section>
      <h2>The same print twice</h2>
      {agreement && !agreement.agrees ? <Caution>{words}</Caution> : <p className="say">{words}</p>}
      {agreement ? <p className="quiet">{agreementFigures(agreement, units)}</p> : null}
    </section>
  );
}
