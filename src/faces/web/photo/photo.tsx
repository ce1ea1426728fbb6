import './photo.css';
import { useCallback, useEffect, useMemo } from 'react';
import { Link, useLocation } from 'wouter';
import type { Pad } from '../../../core/body/pad.ts';
import { lastTurned, roundRecord } from '../../../core/ledger/round-record.ts';
import type { Corners } from '../../../core/print/picture.ts';
import { zonesByPad } from '../../../shop/bench/pass.ts';
import { asItLies, cornersFoundWords, startCorners } from '../../../shop/print/corner-words.ts';
import { marksBefore } from '../../../shop/print/mark-fit.ts';
import type { Marking } from '../../../shop/print/marking.ts';
import type { ShownReading } from '../../../shop/print/photo-reading.ts';
import { readingRefusal } from '../../../shop/print/photo-words.ts';
import { squareSide_mm } from '../../../shop/print/reading-words.ts';
import { leastConfidence } from '../../../shop/print/trust-words.ts';
import { HowTurned } from '../bench/how-turned.tsx';
import { GoButton } from '../frame/go.tsx';
import { JobScreen } from '../frame/job-screen.tsx';
import { Wrong } from '../frame/notice.tsx';
import { UnderWay } from '../frame/under-way.tsx';
import { useDraft } from '../keep/draft.ts';
import { type OpenJob, useAnswer, useWrite } from '../keep/jobs.ts';
import { Refusing } from '../keep/server.ts';
import { useSettings } from '../keep/settings.ts';
import { useCorners, useReading } from './asked.ts';
import { ChoosePhoto, PhotoInput } from './choose-photo.tsx';
import { Compare } from './compare.tsx';
import { CornerStep } from './corners.tsx';
import { dropTaps } from './drop-taps.ts';
import { MarkStep } from './mark-step.tsx';
import { type PhotoDraft, photoDraftKey, withoutPhoto } from './photo-draft.ts';
import { ReadingStep } from './reading-step.tsx';
import { useSending } from './sending.ts';
import { useSteady } from './steady.ts';

/** Marks that have not been touched for so long are read with, ms. */
const untouched_ms = 500;

/** One pad's print by photo: the photo, its corners, the reading, and into the round. */
export const PhotoScreen = ({ id, pad }: { readonly id: string; readonly pad: string }) => (
  <JobScreen id={id} title={(open) => `${capital(pad)}, round ${open.job.round}`}>
    {(open) => {
      const { plan, live, round } = open.job;
      const found = plan.slide.pads.find((one) => one.name === pad);
      if (!found)
        return (
          <main className="page narrow">
            <p className="say">There is no pad “{pad}” in this job.</p>
          </main>
        );
      // Which way it lies settles which end of the photo is which.
      if (roundRecord(live, round).turned === undefined) return <HowTurned open={open} />;
      return <PadPhoto key={`${round} ${pad}`} open={open} pad={found} />;
    }}
  </JobScreen>
);

/** Marking is over: what is half made of a mark is let go. */
const withoutMarking = ({ atMarks: _, ...draft }: PhotoDraft, { marks }: Marking): PhotoDraft => ({
  ...draft,
  marking: { marks },
});

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function PadPhoto({ open, pad }: { readonly open: OpenJob; readonly pad: Pad }) {
  const { id, job } = open;
  const { plan, live, round } = job;
  const key = photoDraftKey(id, round, pad.name);
  const [draft, setDraft, finish] = useDraft<PhotoDraft>(key, {});
  const [sending, takePhoto, stopSending] = useSending(key, (photo) =>
    setDraft({ ...withoutPhoto(draft), photo }),
  );
  const { units } = useSettings();
  const { length_mm, width_mm } = pad;
  const size = useMemo(() => ({ length_mm, width_mm }), [length_mm, width_mm]);
  const face = useMemo(() => ({ ...size, units }), [size, units]);
  const write = useWrite(id);
  const [, go] = useLocation();
  const answer = useAnswer(id);
  const turned = lastTurned(live);
  const { photo, corners, settled, atMarks = false } = draft;
  const known = useMemo(() => marksBefore(live, pad.name, size), [live, pad.name, size]);
  const marking: Marking = draft.marking ?? { marks: known };
  const marks = useSteady(marking.marks, atMarks ? untouched_ms : 0);
  const looked = useCorners(photo && !corners ? photo.hash : undefined, size);
  const cell_mm = squareSide_mm(units);
  const read = useReading(
    photo && corners && settled
      ? {
          hash: photo.hash,
          corners,
          size,
          cell_mm,
          zones: pad.zones,
          ...(marks.length ? { exclusions: marks } : {}),
        }
      : undefined,
  );

  const place = useCallback(
    (at: Corners, about: string) =>
      setDraft({ ...withoutPhoto(draft), ...(photo ? { photo } : {}), corners: at, about }),
    [photo, draft, setDraft],
  );
  const found = looked.data;
  const notFound = looked.error;
  useEffect(() => {
    if (!photo || corners) return;
    if (found)
      place(
        'why' in found ? startCorners(photo, size, turned) : asItLies(found.corners, turned),
        `Photo kept. ${cornersFoundWords(found)}`,
      );
    else if (notFound)
      place(
        startCorners(photo, size, turned),
        `Photo kept. The corners could not be looked for: ${notFound instanceof Refusing ? notFound.message : 'the shop is out of reach'}. Drag them.`,
      );
  });

  const steer = answer?.round === round && answer.steer?.ok ? answer.steer : undefined;
  const passes = steer ? zonesByPad(steer.plan.zones, 'passes_now')[pad.name] : undefined;
  const back = `/job/${encodeURIComponent(id)}/print`;
  const use = (reading: ShownReading) => {
    if (!photo || !corners) return;
    const shares = (reading.zone_shares ?? []).map((share) => share ?? null);
    write({
      kind: 'print photographed',
      round,
      pad: pad.name,
      photo: photo.hash,
      corners,
      size,
      // An empty list is said too, where there was one: the next photo begins without.
      ...(marks.length || known.length ? { exclusions: marks } : {}),
      shares,
      density_per_25mm: reading.density_per_25mm,
      bearing_pct: reading.bearing_pct,
      confidence: reading.trust.confidence,
      warnings: [...new Set(reading.warnings.map(({ code }) => code))],
    });
    dropTaps(id, round, pad.name, shares);
    finish();
    go(back);
  };
  const again = () => setDraft(withoutPhoto(draft));
  const reading = settled ? read.data : undefined;
  // Read with other marks than these, and shown until these are read.
  const stale = read.isPlaceholderData || marks !== marking.marks;
  const good = reading !== undefined && reading.trust.confidence >= leastConfidence;

  return (
    <main className="page with-foot photo-page">
      <div className="pair three">
        {!photo ? (
          <ChoosePhoto pad={pad.name} sending={sending} onStop={stopSending} onSend={takePhoto} />
        ) : corners && settled && atMarks ? (
          <MarkStep
            photo={photo}
            corners={corners}
            face={face}
            plan={plan}
            marking={marking}
            onMarking={(next) => setDraft({ ...draft, marking: next })}
            reading={reading}
            reads={stale || (read.isFetching && !reading)}
          />
        ) : reading ? (
          <ReadingStep
            pad={pad.name}
            hash={photo.hash}
            plan={plan}
            reading={reading}
            units={units}
            passes={passes}
            marks={marks}
            onCorners={() => setDraft({ ...draft, settled: false })}
            onMarks={() => setDraft({ ...draft, atMarks: true })}
          />
        ) : corners ? (
          <CornerStep
            photo={photo}
            corners={corners}
            places={plan.places}
            about={draft.about}
            onCorners={(at, about) =>
              setDraft({
                ...withoutPhoto(draft),
                photo,
                corners: at,
                ...(about === undefined ? {} : { about }),
                settled: false,
              })
            }
          />
        ) : (
          <UnderWay
            words="Kept. Looking for its corners, a few seconds."
            stop="Set them by hand"
            onStop={() => place(startCorners(photo, size, turned), 'Photo kept. Drag the corners.')}
          />
        )}
      </div>
      {photo && reading && !atMarks ? (
        <Compare open={open} pad={pad} hash={photo.hash} reading={reading} marks={marks} units={units} />
      ) : null}
      <footer className="foot">
        {read.error && settled ? (
          <Wrong role="alert">
            {read.error instanceof Refusing
              ? readingRefusal(read.error.refusal)
              : 'The shop is out of reach. The photo and its corners are kept; read it again when it is back.'}
          </Wrong>
        ) : null}
        <div className="beside">
          <Link className="third" href={back}>
            Back to the print
          </Link>
          {photo ? null : <PhotoInput words="Choose a file" onPhoto={takePhoto} />}
          {photo && (good || !reading) && !atMarks ? (
            <button type="button" className="third" onClick={again}>
              Take another photo
            </button>
          ) : null}
          {settled && read.isFetching && !reading && !atMarks ? (
            <button type="button" className="third" onClick={() => setDraft({ ...draft, settled: false })}>
              Stop reading
            </button>
          ) : null}
          {reading && !good && !atMarks ? (
            <button type="button" className="third" onClick={() => !stale && use(reading)}>
              Use it all the same
            </button>
          ) : null}
        </div>
        {photo ? null : (
          <PhotoInput words={`Photograph the ${pad.name}`} camera primary onPhoto={takePhoto} />
        )}
        {atMarks ? (
          <GoButton onPress={() => setDraft(withoutMarking(draft, marking))}>Done marking</GoButton>
        ) : reading ? (
          good ? (
            <GoButton
              onPress={() => {
                if (!stale) use(reading);
              }}
              {...(stale ? { end: 'reading it' } : {})}
            >
              Use this print
            </GoButton>
          ) : (
            <GoButton onPress={again}>Take it again</GoButton>
          )
        ) : corners ? (
          <GoButton
            onPress={() => {
              if (settled) void read.refetch();
              else setDraft({ ...draft, settled: true });
            }}
            {...(settled && read.isFetching ? { end: 'reading it' } : {})}
          >
            Read the print
          </GoButton>
        ) : null}
      </footer>
    </main>
  );
}
