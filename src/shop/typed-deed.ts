import { BadInput, quoted } from '../contract/refusal.ts';
import type { JobPlan, TypedReading } from '../core/ledger/entry.ts';
import { readDeviation } from '../core/quantity/deviation.ts';
import { readSlope } from '../core/quantity/slope.ts';

/** Columns that bare numbers are in: µm for indicators and mm/m for levels, or tenths and thou in 12 in. */
const columns = {
  metric: { deviation: 'um', slope: 'mm/m' },
  inch: { deviation: 'tenths', slope: 'thou/12 in' },
} as const;

/**
 * A deed whose readings are written as they are typed at the bench ("+7", "-.02 mm/m", "half thou"), with each of them read;
 * everything else is left as it is and held to its kind later.
 * @throws BadInput  a reading that cannot be read, under its own path
 */
export function typedDeed(plan: JobPlan, deed: unknown, units: keyof typeof columns): unknown {
  if (deed === null || typeof deed !== 'object' || !('setup' in deed)) return deed;
  const level = plan.setups.find((one) => one.id === deed.setup)?.kind === 'level';
  const { deviation, slope } = columns[units];
  const read = (typed: unknown, path: string): unknown => {
    if (typeof typed !== 'string') return typed;
    const found = level ? readSlope(typed, slope) : readDeviation(typed, deviation);
    if (!found.ok) throw new BadInput([{ path, found: quoted(typed), expected: `a reading: ${found.why}` }]);
    return { typed, value: 'um' in found ? found.um : found.urad } satisfies TypedReading;
  };
  return {
    ...deed,
    ...('reading' in deed ? { reading: read(deed.reading, 'reading') } : {}),
    ...('readings' in deed && Array.isArray(deed.readings)
      ? { readings: deed.readings.map((one, k) => read(one, `readings[${k}]`)) }
      : {}),
  };
}
