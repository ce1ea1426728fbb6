import type { JobPlan } from '../../core/ledger/entry.ts';
import { readDeviation } from '../../core/quantity/deviation.ts';
import { readLength, sayLength } from '../../core/quantity/length.ts';
import { readSlope, spokenSlope } from '../../core/quantity/slope.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import type { Bed } from '../../core/site/bed.ts';
import { limitNames, misplaced, usualPlaces, type WorkPlaces } from './where-to-print.ts';

/** What is typed of the work, by name. */
export type WorkDraft = Readonly<Record<string, string>>;

/** What a user is asked of the work; lengths, and what parts may be out. */
export type AskedOfWork = Exclude<keyof WorkPlaces, 'weight_kg'>;
const allowed: readonly AskedOfWork[] = Object.values(limitNames).flat();
const lengths: readonly AskedOfWork[] = ['from_mm', 'to_mm', 'most_mm', 'tool_across_mm', 'tool_up_mm'];

/** The work as typed, with what is usual where nothing is said; and why what cannot be taken is not. */
export interface WorkTyped {
  readonly work: WorkPlaces;
  readonly usual: WorkPlaces;
  readonly wrong: Partial<Record<AskedOfWork, string>>;
}

export function workTyped(
  plan: Pick<JobPlan, 'slide'>,
  bed: Bed,
  draft: WorkDraft,
  system: UnitSystem,
): WorkTyped {
  const usual = usualPlaces(plan, bed);
  const wrong: Partial<Record<AskedOfWork, string>> = {};
  const work: Record<keyof WorkPlaces, number> = { ...usual };
  const take = (name: AskedOfWork, read: { ok: true; value: number } | { ok: false; why: string }) => {
    if (read.ok) work[name] = read.value;
    else wrong[name] = read.why;
  };
  for (const name of lengths) {
    const text = (draft[name] ?? '').trim();
    if (text === '') continue;
    const read = readLength(text, system === 'metric' ? 'mm' : 'in');
    take(name, read.ok ? { ok: true, value: read.mm } : read);
  }
  for (const name of allowed) {
    const text = (draft[name] ?? '').trim();
    if (text === '') continue;
    const read = name.endsWith('_urad')
      ? readSlope(text, spokenSlope(system))
      : readDeviation(text, system === 'metric' ? 'um' : 'thou');
    if (!read.ok) {
      take(name, read);
      continue;
    }
    const value = 'urad' in read ? read.urad : read.um;
    if (value <= 0) take(name, { ok: false, why: `Read as ${read.echo}; expected more than 0.` });
    else take(name, { ok: true, value });
  }
  // Where the stretch was not typed its end follows the typed beginning, and so does the place of most work.
  const isMostTyped = (draft.most_mm ?? '').trim() !== '';
  if (!isMostTyped) work.most_mm = work.from_mm + (work.to_mm - work.from_mm) / 3;
  const text = (mm: number) => sayLength(mm, system).text;
  for (const name of ['from_mm', 'to_mm', 'most_mm'] as const) {
    const range = misplaced(plan, bed, work)[name];
    if (!range) continue;
    wrong[name] ??=
      `Read as ${text(work[name])}; expected ${text(range[0])} to ${text(range[1])}: ${name === 'most_mm' ? 'there it works' : `there the whole slide stands on surveyed bed${name === 'to_mm' ? ', after where its work begins' : ''}`}.`;
    // The rest is told as if it had not been typed.
    work[name] = name === 'most_mm' ? range[0] + (range[1] - range[0]) / 3 : usual[name];
  }
  return { work, usual: isMostTyped ? usual : { ...usual, most_mm: work.most_mm }, wrong };
}
