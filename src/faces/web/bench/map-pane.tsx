import { memo, useDeferredValue, useState } from 'react';
import { Link } from 'wouter';
import { lastTurned, type RoundRecord } from '../../../core/ledger/round-record.ts';
import type { SteerAnswer } from '../../../core/plan/answer.ts';
import { sayDeviation } from '../../../core/quantity/say.ts';
import type { UnitSystem } from '../../../core/quantity/unit.ts';
import { passStrip } from '../../../draw/pass-strip.ts';
import type { MapShow } from '../../../draw/scrape-map.ts';
import { zonesByPad } from '../../../shop/bench/pass.ts';
import { Figure } from '../figure.tsx';
import { Segments } from '../frame/segments.tsx';
import { useWidth } from '../frame/width.ts';
import { type OpenJob, useWrite } from '../keep/jobs.ts';
import { PartMap } from './part-map.tsx';
import { TurnedLink } from './turned-link.tsx';

type Shown = 'passes' | 'print' | 'depth';

const headings: Readonly<Record<Shown, string>> = {
  passes: 'Passes by zone',
  print: 'Print, % blue',
  depth: 'Depth by zone',
};

/** What the map is drawn from. */
interface Drawn {
  readonly open: OpenJob;
  readonly record: RoundRecord;
  readonly steer: SteerAnswer;
  readonly units: UnitSystem;
}

/** Where to scrape: the part as it lies on the bench, by passes, by blue, or by depth. */
export function MapPane(props: Drawn & { readonly first: Shown }) {
  const { open, record, steer, units, first } = props;
  const [chosen, setChosen] = useState<Shown>(first);
  // The choice answers the tap at once; the map is drawn in the moment after.
  const later = useDeferredValue(chosen);
  const choices = [
    { value: 'passes', words: 'Passes' },
    ...(record.print ? [{ value: 'print', words: 'Print' } as const] : []),
    { value: 'depth', words: 'Depth' },
  ] as const;
  const drawn = { open, record, steer, units };
  return (
    <div className="where">
      <MapHead {...drawn} shown={standing(later, record)} />
      <div className="segments-line">
        <Segments
          label="What the map shows"
          choices={choices}
          chosen={standing(chosen, record)}
          onChoose={setChosen}
        />
      </div>
      <MapBody {...drawn} shown={standing(later, record)} />
    </div>
  );
}

/** A round that is not printed yet has no print to show: the heading says what the map then shows. */
const standing = (chosen: Shown, { print }: RoundRecord): Shown =>
  chosen === 'print' && !print ? 'passes' : chosen;

const MapHead = memo(function MapHead(props: Drawn & { readonly shown: Shown }) {
  const { open, steer, units, shown } = props;
  const write = useWrite(open.id);
  const { live, round } = open.job;
  return (
    <>
      <h2>
        {headings[shown]}
        {shown === 'depth' ? `, ${units === 'metric' ? 'µm' : 'tenths'}` : ''}
      </h2>
      <TurnedLink
        turned={lastTurned(live)}
        zones={steer.plan.zones.length}
        onTurn={(how) => write({ kind: 'part turned over', round, how })}
      />
    </>
  );
});

const MapBody = memo(function MapBody(props: Drawn & { readonly shown: Shown }) {
  const { open, record, steer, units, shown } = props;
  const { plan, live } = open.job;
  const strip = shown === 'passes' && steer.plan.action === 'scrape';
  return (
    <>
      <PartMap
        title={headings[shown]}
        plan={plan}
        turned={lastTurned(live)}
        show={showOf(shown, record, steer, units)}
      />
      {shown === 'print' ? (
        <Link className="third" href={`/job/${encodeURIComponent(open.id)}/print`}>
          Photos of the print
        </Link>
      ) : null}
      {strip ? (
        <Strip
          open={open}
          passes={zonesByPad(steer.plan.zones, 'passes_now')}
          now={record.passes.length + 1}
        />
      ) : null}
    </>
  );
});

function showOf(shown: Shown, record: RoundRecord, steer: SteerAnswer, units: UnitSystem): MapShow {
  if (shown === 'print' && record.print)
    return { kind: 'blue', share: record.print.share, round: record.round };
  if (shown === 'depth') {
    const values = zonesByPad(steer.plan.zones, 'depth_um');
    const text = (depth_um: number) =>
      sayDeviation(depth_um, units, {
        signed: false,
        unit: units === 'metric' ? 'um' : 'tenths',
        decimals: units === 'metric' ? 0 : 1,
      }).number;
    const texts = Object.fromEntries(Object.entries(values).map(([pad, row]) => [pad, row.map(text)]));
    return { kind: 'heights', values, texts };
  }
  return { kind: 'passes', passes: zonesByPad(steer.plan.zones, 'passes_now') };
}

function Strip(props: {
  readonly open: OpenJob;
  readonly passes: Readonly<Record<string, readonly number[]>>;
  readonly now: number;
}) {
  const { open, passes, now } = props;
  const { plan, live } = open.job;
  const [ref, width] = useWidth<HTMLDivElement>(700);
  return (
    <div className="strip wide-only" ref={ref}>
      <Figure
        shape={passStrip({
          title: 'Passes of this plan, one after the other',
          slide: plan.slide,
          turnedOver: lastTurned(live),
          passes,
          now,
          width,
        })}
      />
    </div>
  );
}
