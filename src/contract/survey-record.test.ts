import { describe, expect, it } from 'vitest';
import { inventedPlan, written } from '../../tests/fixture/invented-job.ts';
import type { Deed } from '../core/ledger/entry.ts';
import { foldJob } from '../core/ledger/job.ts';
import { surveysOf } from '../core/ledger/survey-record.ts';
import { sentEntry } from './entry.ts';
import { entryFits } from './entry-fits.ts';
import { jobFile, jobFileText } from './job-file.ts';
import { BadInput, issueText } from './refusal.ts';

const sheet = {
  how: 'level',
  unit: 'mm/m',
  lengths: 'mm',
  fields: { step: '200' },
  cells: { there: ['.02', '-.01', '0'] },
} as const;
const survey = {
  kind: 'survey taken',
  what: 'line',
  of: 'front way',
  ways: ['front'],
  from_mm: 100,
  sheet,
  input: { kind: 'angles', step_mm: 200, angles_urad: [20, -10, 0] },
} as const satisfies Deed;
const sent = (deed: object) => ({ ...deed, id: 'a', at: '2031-11-25T14:00:00Z' });

function refusal(deed: object): string[] {
  const job = foldJob(written([{ kind: 'job made', plan: inventedPlan }]));
  try {
    entryFits(job, sentEntry(sent(deed)));
  } catch (failure) {
    if (failure instanceof BadInput) return failure.issues.map(issueText);
    throw failure;
  }
  return [];
}

describe('a survey kept with a job', () => {
  it('is held to the verb that works it out, and to the plan', () => {
    expect(refusal(survey)).toEqual([]);
    expect(refusal({ ...survey, input: { ...survey.input, angles_urad: [20, '7'] } })).toEqual([
      'input.angles_urad[1]: "7"; expected a finite number',
    ]);
    expect(refusal({ ...survey, ways: ['middle'] })[0]).toContain(
      'ways[0]: "middle"; expected one of "front"',
    );
    expect(refusal({ ...survey, what: 'plate' })[0]).toContain('input.kind');
    const { from_mm: _, ...placeless } = survey;
    expect(refusal(placeless)[0]).toContain('from_mm: nothing');
  });

  it('goes through the job file without a change, sheet and all', () => {
    const hinge = { kind: 'hinge tested', round: 1, test: { pushed_first: 0.71 } } as const;
    const rock = {
      kind: 'rock tested',
      round: 1,
      test: { moved_um: [1, 12, 0, 11], sd_um: 1, length_mm: 480, width_mm: 300 },
    } as const;
    const entries = written([{ kind: 'job made', plan: inventedPlan }, survey, hinge, rock]);
    const text = jobFileText({ format: 'waywright-job', version: 1, id: 'j', entries });
    expect(jobFileText(jobFile(JSON.parse(text)))).toBe(text);
  });

  it('counts until a later one of the same way, and again once that is undone', () => {
    const later = { ...survey, input: { ...survey.input, angles_urad: [20, -10, 5] } };
    const deeds: Deed[] = [{ kind: 'job made', plan: inventedPlan }, survey, later];
    const found = (all: Deed[]) =>
      [...surveysOf(foldJob(written(all)).live).values()].map((one) => one.entry);
    expect(found(deeds)).toEqual(['e3']);
    expect(found([...deeds, { kind: 'undone', entry: 'e3' }])).toEqual(['e2']);
    const across = { ...survey, input: { ...survey.input, direction: 'horizontal' as const } };
    expect(found([...deeds, across])).toEqual(['e3', 'e4']);
  });
});
