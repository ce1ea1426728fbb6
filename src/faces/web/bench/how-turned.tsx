import { lastTurned } from '../../../core/ledger/round-record.ts';
import { Caution } from '../frame/notice.tsx';
import { type OpenJob, useWrite } from '../keep/jobs.ts';
import { LieQuestion } from './lie.tsx';
import { numberedZones } from './numbered-zones.ts';
import { PartMap } from './part-map.tsx';

/** Asked each time the part is lifted, before anything is read off it or scraped: a map read end for end costs a round. */
export function HowTurned({ open }: { readonly open: OpenJob }) {
  const write = useWrite(open.id);
  const { plan, round, live } = open.job;
  const zones = plan.slide.pads.reduce((sum, pad) => sum + pad.zones, 0);
  const before = lastTurned(live);
  const isFirst = !live.some((entry) => entry.kind === 'part turned over');
  return (
    <main className="page">
      <div className="pair">
        <div>
          <h2>Which way did you turn it?</h2>
          <p className="say">
            Lift it, turn it over, lay it on the bench. The map is drawn the way your part lies. Find the
            punch mark, then check the names of the ends.
          </p>
          {isFirst ? (
            <p>
              No mark on it yet? Put one on now, with a punch or a paint pen, at the corner that is ringed in
              the drawing, and check where it sits on the machine.
            </p>
          ) : null}
          <LieQuestion onChoose={(how) => write({ kind: 'part turned over', round, how })} />
          <Caution>Castings crush. Rated lifting gear, blocks before hands, nobody under the load.</Caution>
        </div>
        <div>
          <PartMap
            title={`The part turned ${before}`}
            plan={plan}
            turned={before}
            show={numberedZones(plan.slide)}
          />
          <p className="quiet">
            Drawn turned {before}
            {isFirst ? ', as most do' : ', as last time'}. Both drawings carry the same {zones} zones. If the
            punch mark is not where the drawing shows it, stop.
          </p>
        </div>
      </div>
    </main>
  );
}
