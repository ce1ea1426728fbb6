import { useState } from 'react';
import type { Pad } from '../../../core/body/pad.ts';
import type { JobPlan } from '../../../core/ledger/entry.ts';
import type { Exclusion } from '../../../core/print/exclusion.ts';
import { isReadable } from '../../../core/print/readable-square.ts';
import type { Cell } from '../../../core/print/reading.ts';
import { percent } from '../../../shop/phrase.ts';
import { changeSentence, signedPoints, zoneChanges } from '../../../shop/print/compare-words.ts';
import type { ShownReading } from '../../../shop/print/photo-reading.ts';
import { Segments } from '../frame/segments.tsx';
import { useReading } from './asked.ts';
import type { RoundPhoto } from './compare.tsx';
import { type Layer, Overlay } from './overlay.tsx';

const noMarks: readonly Exclusion[] = [];

/** The last round's photo of the same pad beside this one, and the difference over this one. */
export function Against(props: {
  readonly last: RoundPhoto;
  readonly pad: Pad;
  readonly hash: string;
  readonly reading: ShownReading;
  /** What this reading leaves out. */
  readonly marks: readonly Exclusion[];
  readonly plan: JobPlan;
}) {
  const { last, pad, hash, reading, marks, plan } = props;
  const [layer, setLayer] = useState<Exclude<Layer, 'photo'>>('zones');
  const { taken, round } = last;
  const before = useReading({
    hash: taken.photo,
    corners: taken.corners,
    size: taken.size,
    cell_mm: reading.cell_mm === 25 ? 25 : 25.4,
    zones: pad.zones,
    ...(taken.exclusions?.length ? { exclusions: taken.exclusions } : {}),
  });
  const shares = reading.zone_shares ?? [];
  const changes = zoneChanges(taken.shares, shares);
  const { places } = plan;
  const notes = (values: readonly (number | null | undefined)[]) =>
    values.map((share) => ({ first: typeof share === 'number' ? percent(share) : '–' }));
  const squares = new Map(before.data?.cells.map((cell) => [`${cell.col} ${cell.row}`, cell]));
  /** Counts of the same square of the surface; squares that glare hides in either photo show a dash. */
  const change = (cell: Cell): string => {
    const was = squares.get(`${cell.col} ${cell.row}`);
    return was && isReadable(was) && isReadable(cell) ? signedPoints(cell.count - was.count) : '–';
  };
  return (
    <section>
      <div className="heading">
        <h2>Since round {round}</h2>
        <Segments
          label="Compare by"
          choices={[
            { value: 'zones', words: 'Zones' },
            { value: 'squares', words: 'Squares' },
          ]}
          chosen={layer}
          onChoose={setLayer}
        />
      </div>
      <p className="say">{changeSentence(changes, round, places.minus_end)}</p>
      <div className="side-by-side">
        <figure>
          <figcaption>Round {round}</figcaption>
          {before.data ? (
            <Overlay
              title={`Round ${round}, ${pad.name}`}
              hash={taken.photo}
              reading={before.data}
              places={places}
              layer={layer}
              marks={taken.exclusions ?? noMarks}
              zones={notes(taken.shares)}
              mostHeight={360}
            />
          ) : (
            <p className="quiet" role="status">
              {before.error
                ? 'Its photo could not be read again; the shares stand in the table.'
                : 'Reading it.'}
            </p>
          )}
        </figure>
        <figure>
          <figcaption>Now</figcaption>
          <Overlay
            title={`Now, ${pad.name}`}
            hash={hash}
            reading={reading}
            places={places}
            layer={layer}
            marks={marks}
            zones={notes(shares)}
            mostHeight={360}
          />
        </figure>
        <figure className="difference">
          <figcaption>
            {layer === 'zones' ? 'Change, points of blue' : 'Change, spots a square'}: plus is more now
          </figcaption>
          <Overlay
            title={`Change since round ${round}, ${pad.name}`}
            hash={hash}
            reading={reading}
            places={places}
            layer={layer}
            marks={marks}
            zones={changes.map(({ points }) => ({
              first: points === undefined ? '–' : signedPoints(points),
            }))}
            text={change}
            plain
            mostHeight={360}
          />
        </figure>
      </div>
    </section>
  );
}
