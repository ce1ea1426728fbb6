import { useMemo } from 'react';
import type { Pad } from '../../../core/body/pad.ts';
import { roundRecord, type TakenPhoto } from '../../../core/ledger/round-record.ts';
import type { Exclusion } from '../../../core/print/exclusion.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import type { ShownReading } from '../../../shop/print/photo-reading.ts';
import type { OpenJob } from '../keep/jobs.ts';
import { Against } from './against.tsx';
import { AgainstPlan } from './against-plan.tsx';
import { Progress } from './progress.tsx';
import { SamePrint } from './same-print.tsx';

/** A pad's photo of a round; the last where there are several. */
export interface RoundPhoto {
  readonly round: number;
  readonly taken: TakenPhoto;
}

/** What the reading is held against: another photo of this print, the round before, all rounds, and the plan. */
export function Compare(props: {
  readonly open: OpenJob;
  readonly pad: Pad;
  readonly hash: string;
  readonly reading: ShownReading;
  readonly marks: readonly Exclusion[];
  readonly units: UnitSystem;
}) {
  const { open, pad, hash, reading, marks, units } = props;
  const { job } = open;
  const photos = useMemo(
    () =>
      Array.from({ length: job.round }, (_, k): RoundPhoto | undefined => {
        const taken = roundRecord(job.live, k + 1).photos.findLast((one) => one.pad === pad.name);
        return taken && { round: k + 1, taken };
      }).filter((one) => one !== undefined),
    [job, pad.name],
  );
  const before = photos.filter(({ round }) => round < job.round);
  const same = photos.find(({ round, taken }) => round === job.round && taken.photo !== hash);
  const last = before.at(-1);
  return (
    <section className="compare" aria-label="Held against what was known">
      {same ? (
        <SamePrint
          taken={same.taken}
          pad={pad}
          reading={reading}
          minusEnd={open.job.plan.places.minus_end}
          units={units}
        />
      ) : null}
      <AgainstPlan open={open} pad={pad} hash={hash} reading={reading} marks={marks} />
      {last ? (
        <Against last={last} pad={pad} hash={hash} reading={reading} marks={marks} plan={job.plan} />
      ) : null}
      {last ? (
        <Progress
          before={before}
          round={job.round}
          density_per_25mm={reading.density_per_25mm}
          bearing_pct={reading.bearing_pct}
          units={units}
        />
      ) : null}
    </section>
  );
}
