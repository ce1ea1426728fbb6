import { useState } from 'react';
import { Link, useParams, useSearchParams } from 'wouter';
import { type AxisRecord, axesOf } from '../../../core/ledger/rebuild-record.ts';
import { blankAxis, blankCentres } from '../../../shop/order/sheet-blanks.ts';
import { JobScreen } from '../frame/job-screen.tsx';
import { clock, dayMonth } from '../frame/kept.tsx';
import type { OpenJob } from '../keep/jobs.ts';
import { AxisSheet } from './sheet.tsx';
import '../machine/machine.css';
import './axis.css';
import { Choice } from '../frame/choice.tsx';
import { Caution } from '../frame/notice.tsx';

const kinds = [
  { of: 'spindle', what: 'Where its axis lies against the travel', blank: blankAxis, toward: 1 },
  { of: 'tailstock barrel', what: 'Where its bore lies against the travel', blank: blankAxis, toward: -1 },
  {
    of: 'centres, height',
    what: 'How high the tailstock stands against the spindle',
    blank: blankCentres,
    toward: -1,
  },
] as const;

/** Spindle, tailstock, centres: swept and read, each a sheet that is kept in the ledger. */
export function AxisScreen() {
  const { id = '' } = useParams<{ id: string }>();
  return (
    <JobScreen key={id} id={id} title={() => 'Axes'}>
      {(open) => <Axes open={open} />}
    </JobScreen>
  );
}

function Axes({ open }: { readonly open: OpenJob }) {
  const [search] = useSearchParams();
  const kept = axesOf(open.job.live);
  const [chosen, choose] = useState<string>();
  const own = [...kept.keys()].filter((of) => !kinds.some((kind) => kind.of === of));
  const start = (of: string): AxisRecord =>
    kept.get(of) ?? (kinds.find((kind) => kind.of === of)?.blank ?? blankAxis)(of);
  if (chosen !== undefined)
    return (
      <AxisSheet
        key={chosen}
        open={open}
        toward={kinds.find((kind) => kind.of === chosen)?.toward}
        from={search.get('step') ?? undefined}
        start={start(chosen)}
        isKept={kept.has(chosen)}
        onBack={() => choose(undefined)}
      />
    );
  return (
    <main className="page narrow">
      <p className="say">
        A bar in the bore, read at two places, turned half round and read again: so the bar’s own error drops
        out, and its sag is taken out.
      </p>
      <ul className="rows">
        {[...kinds.map(({ of, what }) => ({ of, what })), ...own.map((of) => ({ of, what: '' }))].map(
          ({ of, what }) => {
            const its = kept.get(of);
            return (
              <li key={of}>
                <Choice
                  name={of.charAt(0).toUpperCase() + of.slice(1)}
                  note={[what, ...(its ? [`Kept ${dayMonth(its.at)} ${clock(its.at)}`] : [])]
                    .filter(Boolean)
                    .join('. ')}
                  onClick={() => choose(of)}
                />
              </li>
            );
          },
        )}
      </ul>
      <Caution>
        Power locked off, chuck off, bore and bar clean. A headstock is heavier than it looks: rated lifting
        gear; follow your local rules.
      </Caution>
      <Link className="third" href={`/job/${encodeURIComponent(open.id)}/order`}>
        Order of work
      </Link>
    </main>
  );
}
