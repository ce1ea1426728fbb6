import type { Turned } from '../../../core/parts/turned.ts';
import { sayLength } from '../../../core/quantity/length.ts';
import { sayDeviation } from '../../../core/quantity/say.ts';
import { heightSentence, signedText, turnedSentence } from '../../../shop/parts/part-sentence.ts';
import { turnedWorked } from '../../../shop/parts-working.ts';
import { phraseText } from '../../../shop/phrase.ts';
import { Words } from '../frame/phrase.tsx';
import { ShowWorking } from '../frame/show-working.tsx';
import type { Units } from '../keep/settings.ts';
import { ProfilePlot } from './plot.tsx';

/** A turned diameter along its length. */
export function TurnedLength(props: {
  readonly made: Turned;
  readonly radius_mm: number;
  readonly system: Units;
  /** Where the places are counted from. */
  readonly along: string;
  /** Whether a surveyed bed is in it. */
  readonly onBed: boolean;
}) {
  const { made, radius_mm, system, along, onBed } = props;
  const { taper_um, bow_um, cylindricity_um, places_mm } = made;
  const sentence = turnedSentence(made, system);
  const height = heightSentence(made, radius_mm, system);
  return (
    <>
      <p className="say">
        <Words phrase={sentence} />
      </p>
      <dl className="parts-numbers">
        <div>
          <dt>Taper, plus: larger toward the tailstock</dt>
          <dd>
            <span className="num">{signedText(taper_um, system)}</span>
          </dd>
        </div>
        {onBed ? (
          <>
            <div>
              <dt>Plus: barrel, minus: hollow</dt>
              <dd>
                <span className="num">{signedText(bow_um, system)}</span>
              </dd>
            </div>
            <div>
              <dt>Cylindricity</dt>
              <dd>
                <span className="num">
                  {
                    sayDeviation(cylindricity_um.value, system, { sd: cylindricity_um.sd, signed: false })
                      .text
                  }
                </span>
              </dd>
            </div>
          </>
        ) : null}
      </dl>
      <ProfilePlot
        title="A turned diameter along its length"
        desc={phraseText(sentence)}
        system={system}
        places_mm={places_mm}
        value_um={made.diameter_um}
        sd_um={made.diameter_sd_um}
        x={{
          name: along,
          left: `${sayLength(places_mm[0]!, system).text}, headstock end`,
          right: sayLength(places_mm.at(-1)!, system).text,
        }}
        y="diameter, plus: larger"
      />
      {height ? <p className="quiet">{height}</p> : null}
      <ShowWorking lines={turnedWorked('turned length', made, system)} of="the turned length" />
    </>
  );
}
