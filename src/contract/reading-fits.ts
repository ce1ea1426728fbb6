import { readsAlong } from '../core/axis/bar-sweep.ts';
import type { BarTaken, Deed, JobPlan, PhotographedPrint } from '../core/ledger/entry.ts';
import type { SweepSetup } from '../core/ledger/setup.ts';
import { barIssues } from './axis.ts';
import { type Issue, quoted } from './refusal.ts';
import { surveyFits } from './survey-record.ts';

/** Names as they stand in a refusal. */
export const listed = (names: readonly string[]): string =>
  names.map((name) => JSON.stringify(name)).join(', ') || 'none';

/** Numbers per pad must name pads of the slide, with one number for each zone. */
function zonesFit(
  plan: JobPlan,
  values: Readonly<Record<string, readonly unknown[]>>,
  path: string,
): Issue[] {
  const { pads } = plan.slide;
  return Object.entries(values).flatMap(([key, list]): Issue[] => {
    const pad = pads.find((one) => one.name === key);
    const at = `${path}[${JSON.stringify(key)}]`;
    if (!pad)
      return [
        {
          path: at,
          found: 'a pad that the slide does not have',
          expected: `one of ${listed(pads.map((p) => p.name))}`,
        },
      ];
    if (list.length === pad.zones) return [];
    return [{ path: at, found: quoted(list), expected: `${pad.zones} numbers, one for each zone` }];
  });
}

function setupFits(plan: JobPlan, id: string, kind: 'sweep' | 'level' | 'height'): Issue[] {
  const setups = plan.setups.filter((setup) => setup.kind === kind);
  if (setups.some((setup) => setup.id === id)) return [];
  const expected = `a ${kind} of the job: ${listed(setups.map((setup) => setup.id))}`;
  return [{ path: 'setup', found: quoted(id), expected }];
}

function stopsFit(plan: JobPlan, id: string, readings: readonly unknown[]): Issue[] {
  const setup = plan.setups.find((one) => one.id === id);
  if (setup?.kind !== 'sweep' || setup.points === readings.length) return [];
  const expected = `${setup.points} readings, one for each stop`;
  return [{ path: 'readings', found: quoted(readings), expected }];
}

function barFits(
  plan: JobPlan,
  { setup: id, held, reading }: BarTaken & { readonly setup: string },
): Issue[] {
  const bars = plan.setups.filter((one): one is SweepSetup => one.kind === 'sweep' && one.bar === true);
  const setup = bars.find((one) => one.id === id);
  if (!setup) {
    const expected = `a set-up of the job along a test bar: ${listed(bars.map((one) => one.id))}`;
    return [{ path: 'setup', found: quoted(id), expected }];
  }
  const across: Issue[] = readsAlong(setup, reading.side)
    ? []
    : [
        {
          path: 'reading.side',
          found: quoted(reading.side),
          expected: `a side that "${setup.name}" can tell of`,
        },
      ];
  return [...barIssues(held, 'held'), ...across];
}

function photoFits(plan: JobPlan, { pad: name, shares }: PhotographedPrint): Issue[] {
  const { pads } = plan.slide;
  const pad = pads.find((one) => one.name === name);
  if (!pad)
    return [{ path: 'pad', found: quoted(name), expected: `one of ${listed(pads.map((p) => p.name))}` }];
  if (shares.length === pad.zones) return [];
  const expected = `${pad.zones} numbers or null, one for each zone of "${name}"`;
  return [{ path: 'shares', found: quoted(shares), expected }];
}

/** What was read, printed or scraped must name set-ups and pads of the plan, with a number for each stop or zone. */
export function readingFits(plan: JobPlan, deed: Deed): Issue[] {
  switch (deed.kind) {
    case 'sweep taken':
      return [...setupFits(plan, deed.setup, 'sweep'), ...stopsFit(plan, deed.setup, deed.readings)];
    case 'bar read':
      return barFits(plan, deed);
    case 'level read':
      return setupFits(plan, deed.setup, 'level');
    case 'height read':
      return setupFits(plan, deed.setup, 'height');
    case 'print read':
      return [...zonesFit(plan, deed.share, 'share'), ...zonesFit(plan, deed.tapped ?? {}, 'tapped')];
    case 'print photographed':
      return photoFits(plan, deed);
    case 'pass made':
      return zonesFit(plan, deed.zones, 'zones');
    case 'survey taken':
      return surveyFits(plan, deed);
    default:
      return [];
  }
}
