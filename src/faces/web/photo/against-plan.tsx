import { useQuery } from '@tanstack/react-query';
import { writtenSteerInput } from '../../../contract/written-steer.ts';
import type { Pad } from '../../../core/body/pad.ts';
import { byPad } from '../../../core/body/slide.ts';
import { roundRecord } from '../../../core/ledger/round-record.ts';
import { steerInput } from '../../../core/ledger/steer-input.ts';
import type { SteerAnswer } from '../../../core/plan/answer.ts';
import { bearsFromBlue } from '../../../core/print/cover.ts';
import type { Exclusion } from '../../../core/print/exclusion.ts';
import { percent } from '../../../shop/phrase.ts';
import {
  planSentence,
  planWord,
  shareRange,
  signedPoints,
  zoneChanges,
} from '../../../shop/print/compare-words.ts';
import type { ShownReading } from '../../../shop/print/photo-reading.ts';
import type { OpenJob } from '../keep/jobs.ts';
import { posted } from '../keep/server.ts';
import { Overlay } from './overlay.tsx';

/** The last round's plan, worked out again from what was known then; asked only where its passes were made. */
function usePlanBefore({ id, job }: OpenJob) {
  const before = job.round - 1;
  const made = before >= 1 && roundRecord(job.live, before).passes.length > 0;
  return useQuery({
    queryKey: ['job', id, 'plan of round', before, job.seq],
    queryFn: ({ signal }) =>
      posted<SteerAnswer>('/api/steer', writtenSteerInput(steerInput(job, before)), signal),
    enabled: made && steerInput(job, before).rounds.length === before,
    staleTime: Number.POSITIVE_INFINITY,
  });
}

/** The print that the last plan foretold beside the one that came, as both lie in the photo, and where they disagree. */
export function AgainstPlan(props: {
  readonly open: OpenJob;
  readonly pad: Pad;
  readonly hash: string;
  readonly reading: ShownReading;
  readonly marks: readonly Exclusion[];
}) {
  const { open, pad, hash, reading, marks } = props;
  const shares = reading.zone_shares ?? [];
  const { data } = usePlanBefore(open);
  const { slide, places } = open.job.plan;
  if (!data?.ok) return null;
  const planned = byPad(slide, data.plan.expected_shares)[pad.name] ?? [];
  const rested = data.rest.print[pad.name] ?? [];
  const doubt = data.rest.print_sd[pad.name] ?? [];
  const changes = zoneChanges(
    planned,
    shares.map((share) => (share === undefined ? undefined : bearsFromBlue(share))),
  );
  return (
    <section>
      <h2>Against the plan of round {open.job.round - 1}</h2>
      <p className="say">{planSentence(changes, places.minus_end)}</p>
      <div className="side-by-side">
        <figure>
          <figcaption>Foretold for this round, % that bears</figcaption>
          <Overlay
            title={`The print of the ${pad.name} that the last plan foretold`}
            hash={hash}
            reading={reading}
            places={places}
            layer="zones"
            marks={marks}
            zones={changes.map(({ before }) => ({ first: shareText(before) }))}
            drawn={{ shares: planned, seed: `${open.id} ${open.job.round} ${pad.name}` }}
            mostHeight={360}
          />
        </figure>
        <figure>
          <figcaption>Seen; over it where they disagree, points</figcaption>
          <Overlay
            title={`The print of the ${pad.name} that was seen, and where it disagrees`}
            hash={hash}
            reading={reading}
            places={places}
            layer="zones"
            marks={marks}
            zones={changes.map(({ now, points, differs }) => ({
              first: shareText(now),
              ...(differs && points !== undefined ? { other: signedPoints(points), wrong: true } : {}),
            }))}
            mostHeight={360}
          />
        </figure>
      </div>
      <table className="by-zone">
        <caption>Bears, zone by zone from the {places.minus_end}</caption>
        <thead>
          <tr>
            <th scope="col">zone</th>
            <th scope="col">planned</th>
            <th scope="col">at rest</th>
            <th scope="col">seen</th>
            <th scope="col">points</th>
            <th scope="col">so</th>
          </tr>
        </thead>
        <tbody>
          {changes.map((change) => (
            <tr key={change.zone}>
              <th scope="row">{change.zone + 1}</th>
              <td>{shareText(change.before)}</td>
              <td>{shareRange(rested[change.zone], doubt[change.zone]) ?? 'not known'}</td>
              <td>{shareText(change.now)}</td>
              <td>{change.points === undefined ? '–' : signedPoints(change.points)}</td>
              <td>{change.differs ? <b>{planWord(change)}</b> : planWord(change)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">
        Where a drawn spot stands says nothing; how many there are does. Planned: what the plan’s own forecast
        gave for the next print. At rest: the same where the part rests on what touches, a range that holds
        two times in three. Seen: by the photo’s blue, against a face that bears all over. Both hold if the
        passes were made as planned.
      </p>
    </section>
  );
}

const shareText = (share: number | null | undefined): string =>
  typeof share === 'number' ? percent(share) : 'not known';
