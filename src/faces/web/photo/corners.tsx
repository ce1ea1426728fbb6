import { useEffect, useMemo, useState } from 'react';
import type { PlaceWords } from '../../../core/ledger/setup.ts';
import type { Corners, PlacePx } from '../../../core/print/picture.ts';
import { stageFit } from '../../../draw/print-overlay-corners.ts';
import { cornerNames, mirrored, quarterTurned, turnedRound } from '../../../shop/print/corner-words.ts';
import { Mark } from '../frame/mark.tsx';
import { Wrong } from '../frame/notice.tsx';
import { useWidth } from '../frame/width.ts';
import { photoAddress } from '../keep/server.ts';
import { CornerStage } from './corner-stage.tsx';
import { NudgePad } from './nudge-pad.tsx';
import type { KeptHead } from './photo-draft.ts';
import { snapped } from './snap.ts';

/** How near an edge must be to draw a corner to it: a thumb's miss on the screen, within limits in the photo, px. */
const snapReach = (scale: number): number => Math.min(120, Math.max(18, 14 / scale));

/** The four corners over the photo, and one of them at a time from close by. */
export function CornerStep(props: {
  readonly photo: KeptHead;
  readonly corners: Corners;
  readonly places: PlaceWords;
  readonly about: string | undefined;
  readonly onCorners: (corners: Corners, about?: string) => void;
}) {
  const { photo, corners, places, about, onCorners } = props;
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const [image, setImage] = useState<HTMLImageElement | null>(null);
  const [chosen, setChosen] = useState<number>();
  const [letGo, setLetGo] = useState<{ readonly corner: number; readonly at: PlacePx }>();
  const [settling, setSettling] = useState<number>();
  const [unseen, setUnseen] = useState(false);
  const fit = useMemo(() => stageFit(photo, width, width < 600 ? 420 : 560), [photo, width]);
  const names = cornerNames(places);
  const ends = { minus: places.minus_end, plus: places.plus_end };
  const loupeScale = Math.min(3, Math.max(0.75, fit.scale * 8));

  const move = (k: number, to: PlacePx) => {
    const next = [...corners] as [PlacePx, PlacePx, PlacePx, PlacePx];
    next[k] = to;
    setLetGo(undefined);
    onCorners(next);
  };
  // After the move is on the page, so that the corner that is snapped is the one that was let go.
  useEffect(() => {
    if (settling === undefined || !image) return;
    setSettling(undefined);
    const before = corners[settling]!;
    const at = snapped(image, corners, settling, snapReach(fit.scale));
    if (at.x === before.x && at.y === before.y) {
      onCorners(corners, 'No clear edge near by: the corner stays where you let go.');
      return;
    }
    const next = [...corners] as [PlacePx, PlacePx, PlacePx, PlacePx];
    next[settling] = at;
    setLetGo({ corner: settling, at: before });
    onCorners(next, 'Snapped to the edge near by.');
  }, [settling, image, corners, fit.scale, onCorners]);

  return (
    <>
      <div>
        <p className="say">
          Put the figure’s corners on those of the blue. The <b>ringed dot</b> goes to the {names[0]}.
        </p>
        <p role="status" className="quiet">
          {about ?? 'Drag a grip, or pick a corner and move it.'}
        </p>
        {letGo ? (
          <button
            type="button"
            className="third"
            onClick={() => {
              const next = [...corners] as [PlacePx, PlacePx, PlacePx, PlacePx];
              next[letGo.corner] = letGo.at;
              setLetGo(undefined);
              onCorners(next, 'Back where you let go.');
            }}
          >
            <Mark name="undo" size={20} />
            Put it back where I let go
          </button>
        ) : null}
      </div>
      <div ref={ref}>
        {unseen ? (
          <Wrong role="alert">
            This browser cannot show the photo’s kind. It is kept; take it again as JPEG to place corners.
          </Wrong>
        ) : null}
        <CornerStage
          address={photoAddress(photo.hash)}
          fit={fit}
          corners={corners}
          names={names}
          ends={ends}
          chosen={chosen}
          onChoose={setChosen}
          onMove={move}
          onLetGo={setSettling}
          image={image}
          onImage={setImage}
          loupeScale={loupeScale}
          onCannotShow={() => setUnseen(true)}
        />
      </div>
      <div className="beside-stage">
        {/* biome-ignore lint/a11y/useSemanticElements: a group of pressed buttons, not a form's fields */}
        <div className="corner-names" role="group" aria-label="The corners, as they lie in the photo">
          {asSeen(corners).map((k) => (
            <button
              key={names[k]}
              type="button"
              className="second"
              aria-pressed={chosen === k}
              onClick={() => setChosen(k)}
            >
              {k === 0 ? <span className="punch" aria-hidden="true" /> : null}
              <span>{names[k]}</span>
            </button>
          ))}
        </div>
        {chosen === undefined ? null : (
          <NudgePad
            image={image}
            corners={corners}
            corner={chosen}
            name={names[chosen]!}
            scale={loupeScale}
            onMove={(to) => move(chosen, to)}
          />
        )}
        <div className="turns">
          <button
            type="button"
            className="third"
            onClick={() => onCorners(turnedRound(corners), 'Turned end for end.')}
          >
            <Mark name="turned over" size={20} />
            Turn the corners round
          </button>
          <button
            type="button"
            className="third"
            onClick={() => onCorners(mirrored(corners), 'Side for side.')}
          >
            Swap the sides
          </button>
          <button
            type="button"
            className="third"
            onClick={() => onCorners(quarterTurned(corners), 'A quarter turn.')}
          >
            A quarter turn
          </button>
        </div>
        <p className="quiet">
          A corner goes to the edge near where you let go; a tap on the photo brings the corner that is
          picked. By keyboard: Tab to a grip, arrow keys move it by a pixel, with Shift by ten.
        </p>
      </div>
    </>
  );
}

/** The corners in the order of reading as they lie in the photo: upper two, then lower two, each from the left. */
function asSeen(corners: Corners): number[] {
  const byHeight = [0, 1, 2, 3].sort((a, b) => corners[a]!.y - corners[b]!.y);
  const fromLeft = (pair: number[]) => pair.sort((a, b) => corners[a]!.x - corners[b]!.x);
  return [...fromLeft(byHeight.slice(0, 2)), ...fromLeft(byHeight.slice(2))];
}
