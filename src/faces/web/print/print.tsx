import { useMemo, useState } from 'react';
import { useLocation } from 'wouter';
import type { BlueWord } from '../../../core/ledger/entry.ts';
import { lastTurned, roundRecord } from '../../../core/ledger/round-record.ts';
import {
  blueWordMeaning,
  blueWords,
  nextOpen,
  type PrintDraft,
  printOf,
  shareOf,
  withZone,
} from '../../../shop/measure/blue.ts';
import { counted } from '../../../shop/phrase.ts';
import { practiceOf } from '../../../shop/practise/practice-of.ts';
import { laidOver, printBefore, tappedPads } from '../../../shop/print/photo-shares.ts';
import { HowTurned } from '../bench/how-turned.tsx';
import { PartMap } from '../bench/part-map.tsx';
import { TurnedLink } from '../bench/turned-link.tsx';
import type { ZonePlace } from '../figure.tsx';
import { GoButton } from '../frame/go.tsx';
import { JobScreen } from '../frame/job-screen.tsx';
import { draftKey, useDraft } from '../keep/draft.ts';
import { type OpenJob, useWrite } from '../keep/jobs.ts';
import { usePrinted } from '../practice/ask.ts';
import { BlueAndPrint } from '../practice/lazy.tsx';
import { PhotoRows } from './photo-rows.tsx';

/** The blue, zone by zone: pick a word, tap the zones that look so. */
export const PrintScreen = ({ id }: { readonly id: string }) => (
  <JobScreen id={id}>
    {(open) =>
      roundRecord(open.job.live, open.job.round).turned === undefined ? (
        <HowTurned open={open} />
      ) : (
        <PrintEntry key={open.job.round} open={open} />
      )
    }
  </JobScreen>
);

const keys: Readonly<Record<string, BlueWord>> = { b: 'burnished', h: 'heavy', f: 'faint', n: 'none' };

function PrintEntry({ open }: { readonly open: OpenJob }) {
  const { id, job } = open;
  const { plan, round, live } = job;
  const { pads } = plan.slide;
  const [tapped, setDraft, finish] = useDraft<PrintDraft>(draftKey(id, round, 'print'), {});
  const before = useMemo(() => printBefore(roundRecord(live, round), pads), [live, round, pads]);
  // What photos have told of stands already; a tap lies over it.
  const draft = laidOver(before, tapped, pads);
  const [brush, setBrush] = useState<BlueWord>('heavy');
  const [chosen, setChosen] = useState<ZonePlace>();
  const [percent, setPercent] = useState('');
  const [asked, setAsked] = useState<string>();
  const practice = practiceOf(job) !== undefined;
  const [blued, setBlued, bluedIsOver] = useDraft(draftKey(id, round, 'blued'), false);
  const printed = usePrinted(open, practice && blued);
  const seen = printed.data?.share;
  const write = useWrite(id);
  const [, go] = useLocation();
  const turned = lastTurned(live);
  const print = printOf(draft, pads);
  const words = Object.fromEntries(
    pads.map((pad) => [
      pad.name,
      Array.from({ length: pad.zones }, (_, z) => {
        const blue = draft[pad.name]?.[z];
        if (!blue) return undefined;
        return 'word' in blue ? blue.word : nearestWord(blue.share);
      }),
    ]),
  );
  const inPercent = pads.some((pad) => draft[pad.name]?.some((blue) => blue && 'share' in blue));

  const paint = (place: ZonePlace, word: BlueWord) => {
    setDraft(withZone(tapped, pads, place, { word }));
    setChosen(place);
    setAsked(undefined);
  };
  /** By key: the word, and on to the next zone without one. */
  const byKey = (place: ZonePlace, key: string): boolean => {
    const word = keys[key.toLowerCase()];
    if (!word) return false;
    setBrush(word);
    const next = withZone(tapped, pads, place, { word });
    setDraft(next);
    const following = nextOpen(laidOver(before, next, pads), pads, place) ?? place;
    setChosen(following);
    focusZone(following);
    return true;
  };
  const takePercent = () => {
    const value = Number(percent.replace('%', '').trim());
    if (!chosen || percent.trim() === '' || !(value >= 0 && value <= 100)) {
      setAsked(chosen ? `“${percent}” is no share of blue; write 0 to 100.` : 'Tap the zone first.');
      return;
    }
    const next = withZone(tapped, pads, chosen, { share: value / 100 });
    setDraft(next);
    setPercent('');
    setAsked(undefined);
    const following = nextOpen(laidOver(before, next, pads), pads, chosen);
    if (following) setChosen(following);
  };
  const restNone = () => {
    let next = tapped;
    for (const pad of pads)
      for (let zone = 0; zone < pad.zones; zone++)
        if (!draft[pad.name]?.[zone]) next = withZone(next, pads, { pad: pad.name, zone }, { word: 'none' });
    setDraft(next);
  };
  /** Zones without a word take the share that is seen. */
  const takeSeen = () => {
    let next = tapped;
    for (const pad of pads)
      for (let zone = 0; zone < pad.zones; zone++) {
        const share = seen?.[pad.name]?.[zone];
        if (!draft[pad.name]?.[zone] && share !== undefined)
          next = withZone(next, pads, { pad: pad.name, zone }, { share });
      }
    setDraft(next);
  };
  const keep = () => {
    if (print.left > 0) {
      setAsked(`${counted(print.left, 'zone')} not said yet.`);
      return;
    }
    // Pads that a photo told of and nobody tapped on are in the round already.
    const said = tappedPads(tapped, pads);
    if (said.length > 0) {
      const words = onlyPads(print.tapped, said);
      write({
        kind: 'print read',
        round,
        share: onlyPads(print.share, said),
        ...(Object.keys(words).length > 0 ? { tapped: words } : {}),
      });
    }
    finish();
    bluedIsOver();
    go(`/job/${encodeURIComponent(id)}`);
  };

  const title = 'The blue by zone, as the part lies';
  return (
    <main className="page with-foot">
      <div className="pair three">
        <div>
          <p className="say">
            Turn it over and look at the blue. Pick a word, then tap the zones that look so.
          </p>
          {practice ? (
            <BlueAndPrint
              blued={blued}
              seen={seen !== undefined}
              left={print.left}
              failure={printed.error}
              onBlue={() => setBlued(true)}
              onTake={takeSeen}
            />
          ) : null}
          <div className="heading">
            <h2>Print by zone</h2>
            <TurnedLink
              turned={turned}
              zones={pads.reduce((sum, pad) => sum + pad.zones, 0)}
              onTurn={(how) => write({ kind: 'part turned over', round, how })}
            />
          </div>
          {/* biome-ignore lint/a11y/useSemanticElements: a group of pressed buttons, not a form's fields */}
          <div className="brushes" role="group" aria-label="How the blue looks">
            {blueWords.map((word) => (
              <button
                key={word}
                type="button"
                className="second"
                aria-pressed={brush === word}
                onClick={() => {
                  setBrush(word);
                  if (chosen && !draft[chosen.pad]?.[chosen.zone]) paint(chosen, word);
                }}
              >
                <span>
                  {word}
                  <small>{blueWordMeaning[word]}</small>
                </span>
              </button>
            ))}
          </div>
        </div>
        <div>
          <PartMap
            title={title}
            plan={plan}
            turned={turned}
            show={
              inPercent && print.left === 0
                ? { kind: 'blue', share: print.share, round }
                : { kind: 'words', words, round, ...(seen ? { seen } : {}) }
            }
            zones={{ chosen, onZone: (place) => paint(place, brush), onKey: byKey }}
          />
          <details className="optional">
            <summary>In per cent instead</summary>
            <div>
              <label className="field">
                <span className="label">
                  Blue in {chosen ? `${chosen.pad}, zone ${chosen.zone + 1}` : 'the zone tapped last'}, %
                </span>
                <input
                  value={percent}
                  inputMode="decimal"
                  autoComplete="off"
                  onChange={(event) => setPercent(event.target.value)}
                  onKeyDown={(event) => {
                    if (event.key === 'Enter') takePercent();
                  }}
                />
              </label>
              <p className="quiet">
                Tap a zone, type its share, press Enter: it goes on to the next.
                {chosen && draft[chosen.pad]?.[chosen.zone]
                  ? ` Now ${Math.round(100 * shareOf(draft[chosen.pad]![chosen.zone]!))} %.`
                  : ''}
              </p>
              <button type="button" className="second" onClick={takePercent}>
                Take this share
              </button>
            </div>
          </details>
          <p className="quiet">
            By keyboard: arrow keys go from zone to zone; b, h, f, n say burnished, heavy, faint, none and go
            on.
          </p>
        </div>
        {practice ? null : <PhotoRows open={open} />}
      </div>
      <footer className="foot">
        <div className="beside">
          <p role="status">
            {asked ?? (print.left > 0 ? `${counted(print.left, 'zone')} to go` : 'All zones said')}
          </p>
          {print.left > 0 ? (
            <button type="button" className="third" onClick={restNone}>
              The rest is none
            </button>
          ) : null}
        </div>
        <GoButton onPress={keep}>Keep this print</GoButton>
      </footer>
    </main>
  );
}

const onlyPads = <T,>(byPad: Readonly<Record<string, T>>, pads: readonly string[]): Record<string, T> =>
  Object.fromEntries(Object.entries(byPad).filter(([pad]) => pads.includes(pad)));

const nearestWord = (share: number): BlueWord =>
  share > 0.9 ? 'burnished' : share > 0.45 ? 'heavy' : share > 0.04 ? 'faint' : 'none';

/** The focus goes on before the next key can come: a fast typist must not write over a zone. */
const focusZone = (place: ZonePlace) =>
  document
    .querySelector<SVGElement>(`[data-pad="${CSS.escape(place.pad)}"][data-zone="${place.zone}"]`)
    ?.focus();
