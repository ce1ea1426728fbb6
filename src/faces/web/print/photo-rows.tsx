import { Link } from 'wouter';
import { type RoundRecord, roundRecord } from '../../../core/ledger/round-record.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import { counted } from '../../../shop/phrase.ts';
import { fromPhoto } from '../../../shop/print/photo-shares.ts';
import { pct, spotsPerSquare, squareWords } from '../../../shop/print/reading-words.ts';
import { Mark } from '../frame/mark.tsx';
import { draftKey } from '../keep/draft.ts';
import type { OpenJob } from '../keep/jobs.ts';
import { useSettings } from '../keep/settings.ts';
import { phoneShelf } from '../keep/shelf.ts';

/** Each pad's photo: to be taken, begun, or which of its zones came from it. */
export function PhotoRows({ open }: { readonly open: OpenJob }) {
  const { id, job } = open;
  const { units } = useSettings();
  const record = roundRecord(job.live, job.round);
  return (
    <section aria-label="By photo">
      <h2>By photo</h2>
      <div className="rows">
        {job.plan.slide.pads.map((pad) => (
          <Link
            key={pad.name}
            className="choice"
            href={`/job/${encodeURIComponent(id)}/photo/${encodeURIComponent(pad.name)}`}
          >
            <Mark name="print" size={28} />
            <span>
              Photograph the {pad.name}
              <small>
                {phoneShelf.read(draftKey(id, job.round, 'photo', pad.name))?.includes('"photo"')
                  ? 'A photo of it is begun. '
                  : ''}
                {words(record, pad, units)}
              </small>
            </span>
            <Mark name="arrow right" size={20} />
          </Link>
        ))}
      </div>
    </section>
  );
}

function words(
  record: RoundRecord,
  pad: { readonly name: string; readonly zones: number },
  units: UnitSystem,
): string {
  const photo = record.photos.findLast((one) => one.pad === pad.name);
  if (!photo) return 'Counts spots and share of every zone.';
  const from = fromPhoto(record, pad).flatMap((yes, z) => (yes ? [z + 1] : []));
  const zones =
    from.length === pad.zones
      ? `All ${pad.zones} zones from a photo`
      : from.length === 0
        ? 'Photographed, then tapped over'
        : `From a photo: ${from.length === 1 ? 'zone' : 'zones'} ${from.join(', ')}`;
  const spots = counted(Math.round(spotsPerSquare(photo.density_per_25mm, units)), 'spot');
  return `${zones}. Bears on ${pct(photo.bearing_pct)}, ${spots} ${squareWords(units)}.`;
}
