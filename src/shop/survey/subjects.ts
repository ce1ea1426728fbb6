import type { Pad } from '../../core/body/pad.ts';
import type { AxisName } from '../../core/body/vector.ts';
import type { JobPlan } from '../../core/ledger/entry.ts';

/** Something that can be surveyed: its key is the survey's own (`surveyKey`). */
export interface Subject {
  readonly key: string;
  readonly kind: 'vertical' | 'horizontal' | 'twist' | 'parallel' | 'flatness';
  readonly of: string;
  /** Pads whose way it is. */
  readonly ways: readonly string[];
}

/** Which coordinates are across the travel and up, for each travel. */
const seenAlong: Readonly<Record<AxisName, readonly [across: number, up: number]>> = {
  x: [1, 2],
  y: [0, 2],
  z: [1, 0],
};

/** A face that looks this little up or across is not moved by the way's form in that direction. */
const faint = 0.05;

/** How much of a way's movement across and up a pad feels: the parts of its normal. */
export function padLooks(pad: Pad, travel: AxisName): { readonly across: number; readonly up: number } {
  const [across, up] = seenAlong[travel];
  return { across: pad.normal[across]!, up: pad.normal[up]! };
}

/** Whether two pads are the flanks of one V: they lean against each other and lie side by side. */
function isVee(one: Pad, other: Pad, travel: AxisName): boolean {
  const [a, b] = [padLooks(one, travel), padLooks(other, travel)];
  if (!(a.across * b.across < -0.05 && a.up * b.up > 0.05)) return false;
  const [across] = seenAlong[travel];
  return Math.abs(one.centre_mm[across]! - other.centre_mm[across]!) < 1.5 * (one.width_mm + other.width_mm);
}

/** Ways as they are surveyed: the flanks of a V together, every other pad by itself. */
function waysOf(plan: JobPlan): { readonly of: string; readonly pads: readonly Pad[] }[] {
  const { pads, free } = plan.slide;
  const left = [...pads];
  const found: Pad[][] = [];
  for (let one = left.shift(); one; one = left.shift()) {
    const first = one;
    const k = left.findIndex((other) => isVee(first, other, free));
    found.push(k < 0 ? [first] : [first, ...left.splice(k, 1)]);
  }
  const isOnly = found.filter((both) => both.length > 1).length === 1;
  return found.map((both) => {
    const names = both.map((pad) => pad.name).join(' and ');
    const of = both.length === 1 ? names : isOnly ? 'the V' : `the V of ${names}`;
    return { of, pads: both };
  });
}

/** What of this job's bed is to be surveyed, way by way: up and down, sideways where the way guides, and the twist of the ways. */
export function surveySubjects(plan: JobPlan): Subject[] {
  const { free } = plan.slide;
  const ways = waysOf(plan);
  const subjects = ways.flatMap(({ of, pads }): Subject[] => {
    const looks = pads.map((pad) => padLooks(pad, free));
    const names = pads.map((pad) => pad.name);
    const as = (kind: 'vertical' | 'horizontal'): Subject => ({
      key: `${kind} of ${of}`,
      kind,
      of,
      ways: names,
    });
    return [
      ...(looks.some(({ up }) => Math.abs(up) > faint) ? [as('vertical')] : []),
      ...(looks.some(({ across }) => Math.abs(across) > faint) ? [as('horizontal')] : []),
    ];
  });
  const twist: Subject = { key: 'twist of the ways', kind: 'twist', of: 'the ways', ways: [] };
  return ways.length > 1 ? [...subjects, twist] : subjects;
}

/** A subject by its key: one of the bed's, or a face or line that the user named. */
export function subjectOf(plan: JobPlan, key: string): Subject | undefined {
  const known = surveySubjects(plan).find((one) => one.key === key);
  if (known) return known;
  const named = /^(vertical|horizontal|twist|parallel|flatness) of (.{1,200})$/.exec(key);
  return named ? { key, kind: named[1] as Subject['kind'], of: named[2]!, ways: [] } : undefined;
}

/** What is looked at, as a heading: "Up and down". */
export const subjectHead: Readonly<Record<Subject['kind'], string>> = {
  vertical: 'Up and down',
  horizontal: 'Sideways',
  twist: 'Twist',
  parallel: 'Parallel',
  flatness: 'Flatness',
};
