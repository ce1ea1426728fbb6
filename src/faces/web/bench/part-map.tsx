import { useMemo } from 'react';
import type { JobPlan, TurnedOver } from '../../../core/ledger/entry.ts';
import { type MapShow, scrapeMap } from '../../../draw/scrape-map.ts';
import { ReadFigure, ZoneFigure, type ZonePlace } from '../figure.tsx';
import { useSame } from '../frame/same.ts';
import { useWidth } from '../frame/width.ts';

/** What makes the zones of a map buttons. */
export interface ZoneDeed {
  readonly chosen?: ZonePlace | undefined;
  readonly pressed?: (place: ZonePlace) => boolean;
  readonly onZone: (place: ZonePlace) => void;
  readonly onKey?: (place: ZonePlace, key: string) => boolean;
}

/** The part as it lies on the bench, drawn to the width there is. */
export function PartMap(props: {
  readonly title: string;
  readonly plan: Pick<JobPlan, 'slide' | 'places'>;
  readonly turned: TurnedOver;
  readonly show: MapShow;
  readonly zones?: ZoneDeed;
}) {
  const { title, plan, turned, show, zones } = props;
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const shown = useSame(show);
  const shape = useMemo(
    () =>
      scrapeMap({
        title,
        slide: plan.slide,
        places: plan.places,
        turnedOver: turned,
        width,
        show: shown,
        ...(zones?.chosen ? { chosen: zones.chosen } : {}),
      }),
    [title, plan.slide, plan.places, turned, width, shown, zones?.chosen],
  );
  const needed = Number(shape.attributes.width);
  const isSwiped = zones !== undefined && needed > document.documentElement.clientWidth;
  return (
    <div className="part-map" ref={ref}>
      {/* A map whose zones need more than the page leaves goes to the edges of the screen: a zone is a thumb wide there. */}
      <div className={needed > width ? 'bleeds' : undefined}>
        {zones ? (
          <ZoneFigure shape={shape} label={title} {...zones} />
        ) : (
          <ReadFigure shape={shape} label={title} />
        )}
      </div>
      {isSwiped ? <p className="quiet">The map is wider than this screen: swipe it along.</p> : null}
    </div>
  );
}
