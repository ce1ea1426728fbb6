import { useMemo } from 'react';
import type { PlaceWords } from '../../../core/ledger/setup.ts';
import type { Exclusion } from '../../../core/print/exclusion.ts';
import type { Cell } from '../../../core/print/reading.ts';
import { exclusionFigure } from '../../../draw/print-overlay-exclusions.ts';
import { foretoldPrint } from '../../../draw/print-overlay-foretold.ts';
import { squareOverlay } from '../../../draw/print-overlay-squares.ts';
import { overlayView } from '../../../draw/print-overlay-view.ts';
import { type ZoneNote, zoneOverlay } from '../../../draw/print-overlay-zones.ts';
import type { ShownReading } from '../../../shop/print/photo-reading.ts';
import { Figure } from '../figure.tsx';
import { useWidth } from '../frame/width.ts';
import { photoAddress } from '../keep/server.ts';
import { ContactLayer } from './contact-layer.tsx';

export type Layer = 'zones' | 'squares' | 'photo';

/** Room for a figure of two places, px. */
const leastSquare = 40;

/** A photo cut to its surface, with what was read of it drawn over it as it lies there. */
export function Overlay(props: {
  readonly title: string;
  readonly hash: string;
  readonly reading: ShownReading;
  readonly places: PlaceWords;
  readonly layer: Layer;
  /** What the reading leaves out. */
  readonly marks: readonly Exclusion[];
  readonly zones: readonly ZoneNote[];
  /** What stands in a square; left out, its count. */
  readonly text?: (cell: Cell) => string;
  /** Without the map of contact: what stands in it is not this photo's alone. */
  readonly plain?: boolean;
  /** Instead of what the photo shows: spots thrown over each zone by its share, 0 to 1. */
  readonly drawn?: { readonly shares: readonly (number | null | undefined)[]; readonly seed: string };
  readonly mostHeight?: number;
}) {
  const {
    title,
    hash,
    reading,
    places,
    layer,
    marks,
    zones,
    text,
    plain = false,
    drawn,
    mostHeight = 520,
  } = props;
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const { corners, size, cell_mm, photo } = reading;
  const view = useMemo(
    () =>
      overlayView({
        corners,
        size,
        width,
        most_height: mostHeight,
        ...(layer === 'squares' ? { squares: { px: leastSquare, mm: cell_mm } } : {}),
      }),
    [corners, size, width, mostHeight, layer, cell_mm],
  );
  const shape = useMemo(() => {
    const ends = { minus: places.minus_end, plus: places.plus_end };
    return layer === 'squares'
      ? squareOverlay({
          title,
          view,
          size,
          cell_mm,
          cells: reading.cells,
          ...(text ? { text } : { spots: reading.spots }),
          ends,
        })
      : zoneOverlay({ title, view, size, zones: layer === 'zones' ? zones : [], ends });
  }, [title, view, size, cell_mm, reading, text, layer, zones, places]);
  const leftOut = useMemo(
    () =>
      marks.length
        ? exclusionFigure({ title: 'Grooves, holes and patches, left out', view, exclusions: marks })
        : undefined,
    [view, marks],
  );
  const seed = drawn?.seed;
  const shares = JSON.stringify(drawn?.shares);
  const foretold = useMemo(
    () =>
      seed === undefined
        ? undefined
        : foretoldPrint({ title, view, size, shares: JSON.parse(shares!), seed }),
    [seed, shares, title, view, size],
  );
  const wide = view.width > width;
  const inside = (
    <div className="stage" style={{ width: view.width, height: view.height }}>
      <img
        src={photoAddress(hash)}
        alt=""
        draggable={false}
        style={{
          left: view.left,
          top: view.top,
          width: photo.width_px * view.scale,
          height: photo.height_px * view.scale,
        }}
      />
      {foretold ? <Figure shape={foretold} className="over" /> : null}
      {layer === 'photo' || plain || foretold ? null : <ContactLayer map={reading.contact_map} view={view} />}
      {leftOut ? <Figure shape={leftOut} className="over" /> : null}
      <Figure shape={shape} className="over" />
    </div>
  );
  return (
    <div ref={ref}>
      {wide ? (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what runs off the side must be reached by the arrow keys too
        // biome-ignore lint/a11y/useSemanticElements: a region of its own to scroll, not a form's fields
        <div className="runs-on" tabIndex={0} role="group" aria-label={`${title}; runs on to the side`}>
          {inside}
        </div>
      ) : (
        inside
      )}
    </div>
  );
}
