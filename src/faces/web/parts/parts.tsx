import { useMemo } from 'react';
import { Link } from 'wouter';
import { surveysOf } from '../../../core/ledger/survey-record.ts';
import type { FeatureAnswer, SteerAnswer } from '../../../core/plan/answer.ts';
import { sayLength } from '../../../core/quantity/length.ts';
import type { RateTime } from '../../../shop/parts/lasting-sentence.ts';
import { facingOf } from '../../../shop/parts/lathe-parts.ts';
import { bedForm } from '../../../shop/survey/bed-form.ts';
import { GoLink } from '../frame/go.tsx';
import { JobScreen } from '../frame/job-screen.tsx';
import { draftKey, useDraft } from '../keep/draft.ts';
import { type OpenJob, useAnswer } from '../keep/jobs.ts';
import { useSettings } from '../keep/settings.ts';
import { BlockMade } from './block.tsx';
import { blockCells, blockSize } from './block-cells.ts';
import { CellFields } from './cell.tsx';
import { foundIn, type PartsDraft, type PartsRead, partsInSystem, readPartsCell } from './cells.ts';
import { Faces } from './faces.tsx';
import {
  faceCells,
  fittingReads,
  lengthOnBed,
  spindleCells,
  spindleFrom,
  turnedAsked,
} from './lathe-cells.ts';
import { TurnedLength } from './turned.tsx';
import { rateCells, Wear, type WearStart } from './wear.tsx';
import './parts.css';
import { Caution } from '../frame/notice.tsx';

/** What parts the machine of a job will make, from what is known of it so far. */
export const PartsScreen = ({ id }: { readonly id: string }) => (
  <JobScreen id={id} title={() => 'Parts'}>
    {(open) => <Parts key={id} open={open} />}
  </JobScreen>
);

/** A feature after all passes of the plan, where there is scraping left to do. */
const plannedOf = (steer: SteerAnswer | undefined, feature: string | undefined): FeatureAnswer | undefined =>
  steer && steer.plan.action !== 'stop'
    ? steer.plan.predicted.find((one) => one.name === feature)
    : undefined;

function Parts({ open }: { readonly open: OpenJob }) {
  const { units } = useSettings();
  const { plan, live } = open.job;
  const answer = useAnswer(open.id);
  const steer = answer?.steer?.ok ? answer.steer : undefined;
  const facing = facingOf(plan);
  const surveys = useMemo(() => surveysOf(live), [live]);
  const form = useMemo(
    () => ((facing !== undefined || plan.makes) && surveys.size ? bedForm(plan, surveys) : undefined),
    [facing, plan, surveys],
  );
  const bed = useMemo(() => lengthOnBed(plan, form, surveys), [plan, form, surveys]);
  const [kept, keep] = useDraft<PartsDraft>(draftKey(open.id, 'parts'), {
    system: units,
    typed: {},
    per: 'year',
  });
  const turnedCells = bed.ok ? bed.cells : bed.plainCells;
  const rates = useMemo(() => rateCells(plan, kept.per), [plan, kept.per]);
  const block = blockCells(plan.makes);
  const cells = [...block, ...faceCells, ...spindleCells, ...turnedCells, ...rates];
  const all = [...block, ...faceCells, ...spindleCells, ...bed.everyCell, ...rates];
  const draft = partsInSystem(kept, (key) => all.find((cell) => cell.key === key)?.unit, units);
  const reads: Readonly<Record<string, PartsRead>> = fittingReads(
    Object.fromEntries(cells.map((cell) => [cell.key, readPartsCell(cell, draft)])),
  );
  const type = (key: string, text: string) => keep({ ...draft, typed: { ...draft.typed, [key]: text } });
  const base = `/job/${encodeURIComponent(open.id)}`;

  const spindle = spindleFrom(reads);
  const rim = foundIn(reads.rim!);
  const size_mm = plan.makes && blockSize(reads);
  const asked = turnedAsked(bed, reads);
  const typedKey = JSON.stringify([asked.numbers, spindle]);
  // A bed's doubt moves each of its heights in turn: worked out only when what is asked has changed.
  // biome-ignore lint/correctness/useExhaustiveDependencies: typedKey says all that asked and spindle say
  const turned = useMemo(() => asked.make(spindle), [typedKey, bed]);

  const isNothingKnown =
    !bed.ok &&
    [...spindleCells, ...turnedCells].every(({ key }) => reads[key]!.state !== 'wrong') &&
    spindleCells.every(({ key }) => reads[key]!.state === 'empty');

  const now = steer?.estimate.features.find((one) => one.name === facing);
  const planned = plannedOf(steer, facing);
  const starts = new Map(
    plan.targets.map(({ feature, low, high, aim }): [string, WearStart] => {
      const then = plannedOf(steer, feature);
      const here = steer?.estimate.features.find((one) => one.name === feature);
      if (then) return [feature, { from: 'as planned', value: then.value, sd: then.sd }];
      if (here) return [feature, { from: 'as it is now', value: here.value, sd: here.sd }];
      return [feature, { from: 'from its aim', value: aim ?? (low + high) / 2, sd: 0 }];
    }),
  );

  const wear = (
    <section className="parts-part" aria-labelledby="parts-lasts">
      <h2 id="parts-lasts">How long it lasts</h2>
      <Wear
        plan={plan}
        starts={starts}
        cells={rates}
        reads={reads}
        draft={draft}
        onType={type}
        onPer={(per: RateTime) => keep({ ...draft, per })}
        system={units}
      />
    </section>
  );
  if (facing === undefined)
    return (
      <main className="page">
        {plan.makes ? null : (
          <p className="say">
            What the machine of the {plan.slide.name} makes is not known: its file says nothing of it. This
            screen tells how long each feature stays in its band.
          </p>
        )}
        <form
          className="parts-form"
          onSubmit={(event) => event.preventDefault()}
          aria-label="What parts it will make"
        >
          {plan.makes ? (
            <section className="parts-part" aria-labelledby="parts-block">
              <h2 id="parts-block">A block</h2>
              <div className="parts-told">
                {!steer ? (
                  <p className="say">
                    How a block comes out is not known yet. Measure the {plan.slide.name} first: one round
                    tells it.
                  </p>
                ) : size_mm ? (
                  <BlockMade
                    plan={plan}
                    makes={plan.makes}
                    size_mm={size_mm}
                    now={steer.estimate.features}
                    planned={steer.plan.action === 'stop' ? undefined : steer.plan.predicted}
                    form={form}
                    surveys={surveys}
                    system={units}
                  />
                ) : (
                  <p className="say">Told once the cells can be read. Nothing typed is lost.</p>
                )}
              </div>
              <CellFields cells={block} draft={draft} reads={reads} onType={type} />
            </section>
          ) : null}
          {wear}
        </form>
      </main>
    );
  return (
    <main className="page with-foot">
      {steer?.alarm ? (
        <Caution>
          The last round does not go with the rounds before it. Settle that on the Bench first.
        </Caution>
      ) : null}
      <form
        className="parts-form"
        onSubmit={(event) => event.preventDefault()}
        aria-label="What parts it will make"
      >
        <section className="parts-part" aria-labelledby="parts-faces">
          <h2 id="parts-faces">Faces</h2>
          <div className="parts-told">
            {now && rim && spindle ? (
              <Faces
                plan={plan}
                now={now}
                planned={planned}
                spindle={spindle}
                withSpindle={reads['spindle across']!.state === 'read'}
                rim_mm={rim.value}
                system={units}
              />
            ) : now ? (
              <p className="say">Told once the cells can be read. Nothing typed is lost.</p>
            ) : (
              <p className="say">
                How faces come out is not known yet. Sweep the cross ways first: one sweep tells it.
              </p>
            )}
          </div>
          <CellFields cells={faceCells} draft={draft} reads={reads} onType={type} />
        </section>
        <section className="parts-part" aria-labelledby="parts-turned">
          <h2 id="parts-turned">Turned diameters</h2>
          <div className="parts-told">
            {isNothingKnown ? (
              <p className="say">
                Type the spindle’s slope, or survey the bed first: nothing else tells how a diameter comes
                out.
              </p>
            ) : turned === undefined ? (
              <p className="say">Told once the cells can be read. Nothing typed is lost.</p>
            ) : 'ok' in turned ? (
              <Caution>
                Printed at {sayLength(turned.printed_mm, units).text}, the saddle does not rest at{' '}
                {sayLength(turned.at_mm, units).text}: its weight tips it off its pads.
              </Caution>
            ) : (
              <TurnedLength
                made={turned}
                radius_mm={asked.radius_mm}
                system={units}
                onBed={bed.ok}
                along={bed.ok ? 'saddle along the bed' : 'from the chuck'}
              />
            )}
            {bed.ok ? (
              bed.notes.map((note) => (
                <p className="quiet" key={note}>
                  {note}
                </p>
              ))
            ) : (
              <p className="quiet">
                The bed is taken as straight, so only the spindle’s slope is in this. {bed.why}{' '}
                <Link className="third" href={`${base}/survey`}>
                  Survey the bed
                </Link>
              </p>
            )}
          </div>
          <div className="parts-asked">
            <CellFields cells={spindleCells} draft={draft} reads={reads} onType={type} />
            <CellFields cells={turnedCells} draft={draft} reads={reads} onType={type} />
            <p className="quiet">
              A number alone takes the unit of its cell;{' '}
              {units === 'metric' ? '12 um in 300 mm' : 'half a thou per foot'} is read too. Your own doubt
              goes behind ±, or +-. All ± here are two sd, 19 times in 20.
            </p>
          </div>
        </section>
        {wear}
      </form>
      <footer className="foot">
        {now ? (
          bed.ok ? (
            <GoLink to={base}>To the Bench</GoLink>
          ) : (
            <GoLink to={`${base}/survey`}>Survey the bed</GoLink>
          )
        ) : (
          <GoLink to={`${base}/measure`}>Sweep the cross ways</GoLink>
        )}
      </footer>
    </main>
  );
}
