import type { JobPlan } from '../core/ledger/entry.ts';
import type { Job } from '../core/ledger/job.ts';
import { type PracticeRecord, practiceTask } from '../core/practice/record.ts';
import type { Issue } from './refusal.ts';

const padsText = (slide: Pick<JobPlan, 'slide'>['slide']): string =>
  slide.pads.map((pad) => `${pad.name} (${pad.zones} zones, ${pad.material})`).join(', ');

/** A practice machine is begun right after its job is made, and has the pads that the plan has. */
export function beginFits(job: Pick<Job, 'plan' | 'entries'>, record: PracticeRecord): Issue[] {
  if (job.entries.length !== 1)
    return [
      {
        path: 'kind',
        found: '"practice begun" in a job that is under way',
        expected: 'it to stand second, right after "job made"',
      },
    ];
  const asked = padsText(practiceTask(record).slide);
  const found = padsText(job.plan.slide);
  if (asked === found) return [];
  return [{ path: 'slide', found: `a plan with ${found}`, expected: `the pads of that slide: ${asked}` }];
}

/** Only a practice machine has a truth to show. */
export const truthFits = (job: Pick<Job, 'entries'>): Issue[] =>
  job.entries.some((entry) => entry.kind === 'practice begun')
    ? []
    : [{ path: 'kind', found: '"truth shown" in a job of a real part', expected: 'a practice machine' }];
