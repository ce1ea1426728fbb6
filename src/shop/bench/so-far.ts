import type { JobPlan } from '../../core/ledger/entry.ts';
import type { RoundRecord } from '../../core/ledger/round-record.ts';
import type { RoundSoFar } from './next-deed.ts';

/** What the next deed is told from. */
export const soFar = (record: RoundRecord, plan: Pick<JobPlan, 'setups'>): RoundSoFar => ({
  round: record.round,
  setups: plan.setups.map(({ id, kind }) => ({ id, kind, taken: (record.taken[id]?.length ?? 0) > 0 })),
  printed: record.print !== undefined,
  lifted: record.turned !== undefined,
  passes_made: record.passes.length,
  signed: record.signed,
  settled: record.causes.length > 0,
});
