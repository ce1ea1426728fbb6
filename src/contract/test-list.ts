import { z } from 'zod';
import { type AcceptanceTest, curves, type TestList } from '../core/chart/acceptance-test.ts';
import { BadInput, checked, type Issue } from './refusal.ts';
import { name, notNegative, positive } from './slide.ts';

/** Nobody here has held a machine against a standard, so nothing may say that one agrees with it. */
const claims =
  /\b(conform|compl(y|ies|iant|iance)|certif(y|ied)\b|in accordance|according to (iso|din|jis))/i;
const honest = (text: string): boolean => !claims.test(text);
const claim = { error: 'no word that a standard is met: it has not been held against one' };
export const words = z.string().min(1).max(1000).refine(honest, claim);
const title = name.refine(honest, claim);
const id = z.string().regex(/^[a-z0-9][a-z0-9-]{0,79}$/, { error: 'small letters, figures and -' });
const key = z.string().regex(/^[a-z][a-z0-9_]*$/, { error: 'small letters, figures and _' });
const limit_um = z.number().min(0.01).max(1e5);

const source = z.strictObject({
  came: z.enum(['seen', 'second hand', 'from memory', 'common practice', "shop's own"]),
  words,
});

/** A limit without its source: what a user may put in place of a list's. */
export const limitShape = {
  sense: z.enum(['plus', 'minus', 'either', 'size']),
  um: limit_um.optional(),
  least_um: notNegative.optional(),
  over_mm: positive.optional(),
  steps: z
    .array(z.strictObject({ up_to_mm: positive, um: limit_um }))
    .min(1)
    .optional(),
  further: z.strictObject({ per_mm: positive, um: notNegative }).optional(),
  most_um: limit_um.optional(),
  local: z
    .array(z.strictObject({ up_to_mm: positive.optional(), um: limit_um, any_mm: positive }))
    .min(1)
    .optional(),
};

export const classLimit = z.strictObject({ ...limitShape, source });

export const testSchema = z.strictObject({
  id,
  group: title,
  name: title,
  curve: z.enum(curves as [string, ...string[]]).optional(),
  kind: z.enum(['slope', 'size']),
  plus: words.optional(),
  how: words,
  length: z.union([positive, key]).optional(),
  by: key.optional(),
  limits: z.record(id, classLimit),
  direction: z.strictObject({ allowed: words, reason: words }).optional(),
  feature: name.optional(),
  minutes: positive.max(10_000),
});

const listSchema = z.strictObject({
  id,
  machine: title,
  about: words,
  classes: z.array(z.strictObject({ id, name: title })).min(1),
  dimensions: z.array(z.strictObject({ key, label: words, value: positive, low: positive, high: positive })),
  scaling: z.strictObject({ floor_um: notNegative, round_um: notNegative, source }),
  groups: z.array(title).min(1),
  tests: z.array(testSchema).min(1).max(500),
  left_out: z.array(z.strictObject({ what: words, why: words })),
});

type Say = (path: string, found: unknown, expected: string) => void;

/** What a limit's own fields ask of each other. */
export function limitFits(
  limit: z.output<typeof classLimit> | (Omit<z.output<typeof classLimit>, 'source'> & { source?: unknown }),
  path: string,
  say: Say,
): void {
  const { um, steps, further, least_um, sense, local } = limit;
  if ((um === undefined) === (steps === undefined))
    say(path, um === undefined ? 'neither um nor steps' : 'both um and steps', 'one of the two');
  if (further && !steps) say(`${path}.further`, 'no steps before it', 'steps that it goes on from');
  steps?.forEach((step, k) => {
    if (k > 0 && step.up_to_mm <= steps[k - 1]!.up_to_mm)
      say(
        `${path}.steps[${k}].up_to_mm`,
        step.up_to_mm,
        `more than ${steps[k - 1]!.up_to_mm}, the step before`,
      );
  });
  if (least_um !== undefined && sense !== 'plus' && sense !== 'minus')
    say(`${path}.least_um`, least_um, 'it with a sense of plus or minus only');
  if (least_um !== undefined && least_um >= (um ?? steps?.[0]?.um ?? Infinity))
    say(`${path}.least_um`, least_um, 'less than the limit itself');
  local?.forEach((one, k) => {
    if (one.up_to_mm === undefined && k < local.length - 1)
      say(`${path}.local[${k}].up_to_mm`, 'nothing', 'a size: only the last local limit is for all others');
  });
}

/** What tests ask of each other and of their list: names apart, groups, classes and dimensions that are there. */
export function testsFit(
  tests: readonly z.output<typeof testSchema>[],
  list: {
    readonly groups: readonly string[];
    readonly classes: readonly string[];
    readonly dimensions: readonly string[];
    readonly taken?: readonly AcceptanceTest[];
  },
  at: string,
  say: Say,
): void {
  const seen = new Map(
    (list.taken ?? []).flatMap((test) => [[test.id, test.name] as const, [test.name, test.name] as const]),
  );
  tests.forEach((test, k) => {
    const path = `${at}[${k}]`;
    if (seen.has(test.id)) say(`${path}.id`, test.id, 'an id that no other test has');
    if (seen.has(test.name)) say(`${path}.name`, test.name, 'a name that no other test has');
    seen.set(test.id, test.name).set(test.name, test.name);
    if (!list.groups.includes(test.group)) say(`${path}.group`, test.group, oneOf(list.groups));
    for (const one of [test.by, test.length])
      if (typeof one === 'string' && !list.dimensions.includes(one))
        say(
          `${path}.${one === test.by ? 'by' : 'length'}`,
          one,
          `a length in mm, or ${oneOf(list.dimensions)}`,
        );
    const others = curves.filter((curve) => curve !== test.curve && test.name.includes(curve));
    if (others.length)
      say(
        `${path}.name`,
        test.name,
        `it not to say "${others[0]}": this one is ${test.curve ?? 'none of the three curves'}`,
      );
    if (test.curve && !test.name.includes(test.curve))
      say(
        `${path}.name`,
        test.name,
        `it to say "${test.curve}", so that the three curves are never taken for each other`,
      );
    for (const [cls, limit] of Object.entries(test.limits)) {
      const where = `${path}.limits.${cls}`;
      if (!list.classes.includes(cls)) say(where, cls, oneOf(list.classes));
      limitFits(limit, where, say);
      if (limit.steps && !test.by) say(`${path}.by`, undefined, 'the dimension that the steps go by');
      if (test.kind === 'slope' && limit.over_mm === undefined)
        say(`${where}.over_mm`, undefined, 'the length a slope’s limit is stated for');
      if (limit.sense !== 'size' && !test.plus)
        say(`${path}.plus`, undefined, 'what plus means, since the limit has a direction');
      if (test.kind === 'slope' && limit.sense === 'size')
        say(`${where}.sense`, limit.sense, 'plus, minus or either: a slope has two directions');
    }
  });
}

const oneOf = (names: readonly string[]): string => names.map((one) => JSON.stringify(one)).join(' or ');

/** Collects what is wrong, then refuses it at once. */
export function gather(look: (say: Say) => void): void {
  const issues: Issue[] = [];
  look((path, found, expected) =>
    issues.push({
      path,
      found: typeof found === 'string' ? found : found === undefined ? 'nothing' : String(found),
      expected,
    }),
  );
  if (issues.length) throw new BadInput(issues);
}

/**
 * A machine's acceptance tests, machines/tests/*.json.
 * @throws BadInput  what does not fit the schema, two tests of one name, a limit without direction or source
 */
export function testListInput(value: unknown): TestList {
  const list = checked(listSchema, value);
  gather((say) => {
    for (const [k, one] of list.dimensions.entries())
      if (one.value < one.low || one.value > one.high)
        say(`dimensions[${k}].value`, one.value, `${one.low} to ${one.high}`);
    testsFit(
      list.tests,
      {
        groups: list.groups,
        classes: list.classes.map((one) => one.id),
        dimensions: list.dimensions.map((one) => one.key),
      },
      'tests',
      say,
    );
  });
  return list as TestList;
}
