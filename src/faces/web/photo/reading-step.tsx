import { useState } from 'react';
import type { JobPlan } from '../../../core/ledger/entry.ts';
import { bearsFromBlue } from '../../../core/print/cover.ts';
import type { Exclusion } from '../../../core/print/exclusion.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import { counted, percent } from '../../../shop/phrase.ts';
import { leftOutWords, netAreaWords } from '../../../shop/print/mark-words.ts';
import type { ShownReading } from '../../../shop/print/photo-reading.ts';
import {
  coverNote,
  evennessWords,
  readingSentence,
  spotsPerSquare,
  squareWords,
  withDoubt,
} from '../../../shop/print/reading-words.ts';
import { trustFigures, trustWords } from '../../../shop/print/trust-words.ts';
import { Mark } from '../frame/mark.tsx';
import { Caution } from '../frame/notice.tsx';
import { Words } from '../frame/phrase.tsx';
import { Segments } from '../frame/segments.tsx';
import { type Layer, Overlay } from './overlay.tsx';
import { SpotSizes } from './spot-sizes.tsx';

/** The reading: a sentence, the numbers, the picture, then what to hold against it. */
export function ReadingStep(props: {
  readonly pad: string;
  readonly hash: string;
  readonly plan: JobPlan;
  readonly reading: ShownReading;
  readonly units: UnitSystem;
  /** Passes to make now on each zone, where there is a plan for this round. */
  readonly passes: readonly number[] | undefined;
  /** Grooves and holes that the reading leaves out. */
  readonly marks: readonly Exclusion[];
  readonly onCorners: () => void;
  readonly onMarks: () => void;
}) {
  const { pad, hash, plan, reading, units, passes, marks, onCorners, onMarks } = props;
  const [layer, setLayer] = useState<Layer>('zones');
  const { places } = plan;
  const trust = trustWords(reading);
  const shares = reading.zone_shares ?? [];
  const { doubt } = reading;
  const bears = withDoubt(reading.bearing_pct, doubt.bearing_pct);
  const spots = withDoubt(
    spotsPerSquare(reading.density_per_25mm, units),
    spotsPerSquare(doubt.density_per_25mm, units),
  );
  return (
    <>
      <div>
        {trust.good ? null : (
          <p className="wrong again" role="alert">
            <Mark name="caution" size={24} />
            <span>{trust.words}</span>
          </p>
        )}
        <p className="say">
          <Words phrase={readingSentence(reading, places, units)} />
        </p>
        <dl className="print-numbers">
          <div>
            <dt>bears</dt>
            <dd>
              <span className="num">{bears.value}</span> <span className="doubt">±&nbsp;{bears.doubt}</span>{' '}
              <span className="unit">%</span>
            </dd>
          </div>
          <div>
            <dt>{squareWords(units)}</dt>
            <dd>
              <span className="num">{spots.value}</span> <span className="doubt">±&nbsp;{spots.doubt}</span>{' '}
              <span className="unit">{spots.value === '1' ? 'spot' : 'spots'}</span>
            </dd>
          </div>
        </dl>
        <p className="quiet">
          {trust.good ? `${trust.words} ` : ''}± holds 19 times in 20, on rendered prints of known truth.
        </p>
        {trust.rest.map(({ code, text }) => (
          <Caution key={code}>{text.charAt(0).toUpperCase() + text.slice(1)}</Caution>
        ))}
        <p className="quiet">
          {leftOutWords(marks)} {netAreaWords(reading.net_area_mm2, reading.size, units)}
        </p>
        <div className="turns">
          <button type="button" className="third" onClick={onMarks}>
            Mark a groove, hole or patch
          </button>
          <button type="button" className="third" onClick={onCorners}>
            Move the corners
          </button>
        </div>
      </div>
      <div>
        <div className="heading">
          <h2>
            {layer === 'squares'
              ? `Spots, ${squareWords(units)}`
              : layer === 'zones'
                ? 'Blue by zone'
                : 'The photo'}
          </h2>
          <Segments
            label="What is drawn over the photo"
            choices={[
              { value: 'zones', words: 'Zones' },
              { value: 'squares', words: 'Squares' },
              { value: 'photo', words: 'Photo' },
            ]}
            chosen={layer}
            onChoose={setLayer}
          />
        </div>
        <Overlay
          title={`What was read of the ${pad}, over its photo`}
          hash={hash}
          reading={reading}
          places={places}
          layer={layer}
          marks={marks}
          zones={shares.map((share, z) => ({
            first: share === undefined ? '–' : percent(share),
            ...(passes
              ? { other: counted(passes[z] ?? 0, 'pass', 'passes'), short: `${passes[z] ?? 0}×` }
              : {}),
          }))}
        />
        <Legend layer={layer} planned={passes !== undefined} marked={marks.length > 0} />
        <ZoneTable shares={shares} passes={passes} end={places.minus_end} />
        <p className="quiet">{coverNote}</p>
      </div>
      <div>
        <section className="working">
          <h3>How evenly</h3>
          <ul className="lines">
            {evennessWords(reading, places, units).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <details className="optional">
            <summary>Working</summary>
            <dl>
              {trustFigures(reading.trust).map(([name, words]) => (
                <div key={name}>
                  <dt>{name}</dt>
                  <dd>{words}</dd>
                </div>
              ))}
              <SpotSizes reading={reading} />
            </dl>
          </details>
        </section>
      </div>
    </>
  );
}

const Legend = (props: { readonly layer: Layer; readonly planned: boolean; readonly marked: boolean }) => {
  const { layer, planned, marked } = props;
  return layer === 'photo' ? (
    <p className="quiet">The photo as it is, with the edge of the surface.</p>
  ) : (
    <ul className="legend quiet">
      <li>
        <span className="key blue" aria-hidden="true" />
        bears
      </li>
      <li>
        <span className="key burnished" aria-hidden="true" />
        burnished, hatched: rubbed bright, highest
      </li>
      <li>
        <span className="key dotted" aria-hidden="true" />
        hidden by glare
      </li>
      {marked ? (
        <li>
          <span className="key left-out" aria-hidden="true" />
          dotted edge: marked as no face, left out
        </li>
      ) : null}
      {layer === 'squares' ? (
        <li>In brackets: cut by the edge. A dash: not readable. Dots: the spots that are counted.</li>
      ) : (
        <li>
          <span className="punch" aria-hidden="true" />
          the corner to find first{planned ? '; 2× is two passes now, by this round’s plan' : ''}
        </li>
      )}
    </ul>
  );
};

/** The same by zone as figures, for who cannot see the picture. */
const ZoneTable = (props: {
  readonly shares: readonly (number | undefined)[];
  readonly passes: readonly number[] | undefined;
  readonly end: string;
}) => (
  <table className="by-zone">
    <caption>Zone by zone, from the {props.end}</caption>
    <thead>
      <tr>
        <th scope="col">zone</th>
        <th scope="col">blue</th>
        <th scope="col">bears</th>
        {props.passes ? <th scope="col">passes now</th> : null}
      </tr>
    </thead>
    <tbody>
      {props.shares.map((share, z) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: zones have no other name than their place
        <tr key={z}>
          <th scope="row">{z + 1}</th>
          <td>{share === undefined ? 'not readable' : percent(share)}</td>
          <td>{share === undefined ? '–' : percent(bearsFromBlue(share))}</td>
          {props.passes ? <td>{props.passes[z] ?? 0}</td> : null}
        </tr>
      ))}
    </tbody>
  </table>
);
