import type { JobPlan } from '../../core/ledger/entry.ts';
import type { SweepSetup } from '../../core/ledger/setup.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { featureLine } from '../bench/feature-line.ts';
import { capital, counted, type Phrase } from '../phrase.ts';
import type { SweepLook } from './look-at-sweep.ts';

/**
 * What one sweep says by itself: "The number falls along the sweep: facing comes out convex, −19 ± 5 µm in 300 mm, by
 * this sweep alone." `turned` says that the instrument counts the other way, so the number shown goes against the sum.
 */
export function sweepSentence(
  look: SweepLook,
  setup: SweepSetup,
  plan: JobPlan,
  system: UnitSystem,
  turned: boolean,
): Phrase {
  const shownWay = look.way === 'stays' || !turned ? look.way : look.way === 'climbs' ? 'falls' : 'climbs';
  const start: Phrase =
    look.way === 'stays'
      ? ['The number ', { b: 'neither climbs nor falls' }, ' beyond its scatter']
      : [
          'The number ',
          { b: shownWay },
          turned ? ' along the sweep; with its signs turned, ' : ' along the sweep: ',
        ];
  const left =
    look.off.length > 0 ? ` ${capital(counted(look.off.length, 'reading'))} off the line left out.` : '';
  const name = setup.tells[0];
  if (!look.feature || name === undefined) return [...start.slice(0, 2), ' along the sweep.', left];
  const line = featureLine(plan, { name, ...look.feature }, system);
  const number = { b: `${line.said.text}` };
  if (look.way === 'stays' || line.way === undefined)
    return [...start.slice(0, 2), ` along the sweep: ${name} `, number, ', by this sweep alone.', left];
  return [...start, `${name} comes out `, { b: line.way }, ', ', number, ', by this sweep alone.', left];
}
