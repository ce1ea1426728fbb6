import { z } from 'zod';
import type { AcceptanceTest, ClassLimit, TestList } from '../core/chart/acceptance-test.ts';
import { localOf, localSuffix, type Results } from '../core/chart/chart.ts';
import type { Kit, SetUp } from '../core/kit/kit.ts';
import { kitQuestion } from './kit.ts';
import { BadInput, checked, quoted } from './refusal.ts';
import { notNegative, positive } from './slide.ts';
import { classLimit, gather, limitFits, limitShape, testSchema, testsFit, words } from './test-list.ts';

/** What is known of the machine, for whoever keeps the chart. Everything may be left out. */
export interface MachineTold {
  readonly name?: string;
  readonly number?: string;
  readonly workshop?: string;
  readonly owner?: string;
  readonly room?: string;
}

/** What a chart is asked, beside a job. */
export interface ChartFile {
  /** Absent: only what the job itself measures, and own tests. */
  readonly list?: TestList;
  readonly class: string;
  readonly dimensions: Readonly<Record<string, number>>;
  readonly machine: MachineTold;
  /** The demo's or the user's word on what this is. */
  readonly note?: string;
  readonly condition?: readonly string[];
  readonly done?: readonly string[];
  /** The list's tests with the user's limits in their place, and own tests behind them. */
  readonly tests: readonly AcceptanceTest[];
  readonly groups: readonly string[];
  readonly results: Readonly<Record<string, Results>>;
  readonly kit?: Kit;
  /** How a line is to be measured next, by line. */
  readonly setups: readonly { readonly target: string; readonly setup: SetUp }[];
  /** Tests of the list that this machine is not put to, each with why. */
  readonly left_out: readonly { readonly test: string; readonly why: string }[];
}

const measured = z.number().min(-1e6).max(1e6);
/** A result as it is written: `value_um` and `doubt_um` (two sd) in µm. */
export const resultSchema = z.strictObject({
  value_um: measured,
  doubt_um: notNegative.max(1e6).optional(),
  shared_um: notNegative.max(1e6).optional(),
  readings: z.int().min(1).max(10_000).optional(),
  over_mm: positive.optional(),
  on: z.iso.date().optional(),
  instrument: words.optional(),
  reference: words.optional(),
});

export const chartFileSchema = z.strictObject({
  list: z.string().min(1).max(80).optional(),
  class: z.string().min(1).max(80).optional(),
  dimensions: z.record(z.string(), positive).default({}),
  machine: z
    .strictObject({
      name: words.optional(),
      number: words.optional(),
      workshop: words.optional(),
      owner: words.optional(),
      room: words.optional(),
    })
    .default({}),
  note: words.optional(),
  condition: z.array(words).max(40).optional(),
  done: z.array(words).max(80).optional(),
  results: z
    .array(
      z.strictObject({
        test: z.string().min(1).max(120),
        first: resultSchema.optional(),
        final: resultSchema.optional(),
      }),
    )
    .max(1000)
    .default([]),
  limits: z
    .array(z.strictObject({ test: z.string(), ...limitShape, source: classLimit.shape.source.optional() }))
    .default([]),
  own_tests: z
    .array(
      z.strictObject({
        ...testSchema.omit({ limits: true }).shape,
        limit: z.strictObject({ ...limitShape, source: classLimit.shape.source.optional() }),
      }),
    )
    .max(200)
    .default([]),
  kit: z.looseObject({}).optional(),
  left_out: z.array(z.strictObject({ test: z.string(), why: words })).default([]),
});

/** How a job's chart is put together: the file without its results, which are entries of their own. Nothing is filled in. */
export const chartSetSchema = z.strictObject({
  ...chartFileSchema.omit({ results: true }).shape,
  dimensions: chartFileSchema.shape.dimensions.unwrap().optional(),
  machine: chartFileSchema.shape.machine.unwrap().optional(),
  limits: chartFileSchema.shape.limits.unwrap().optional(),
  own_tests: chartFileSchema.shape.own_tests.unwrap().optional(),
  left_out: chartFileSchema.shape.left_out.unwrap().optional(),
});

/** The class of a chart without a list. */
const soleClass = 'own';
const ownSource = { came: "shop's own", words: 'chosen for this machine' } as const;
const among = (names: readonly string[]): string =>
  `one of ${names.map((one) => JSON.stringify(one)).join(', ')}`;

/**
 * A chart's file: which tests, the machine's sizes, results, own tests and own limits. See docs/contract.md, `chart`.
 *
 * @param lists  the lists of tests there are
 * @param asked  list and class as asked on the way in, before what the file says; whether results may be passed over
 * @throws BadInput  what does not fit: a test that is not there, a result over another length of what has none, two results of a line
 */
export function chartFile(
  value: unknown,
  lists: readonly TestList[],
  asked: {
    readonly list?: string;
    readonly class?: string;
    /** Results that have no line here, or do not fit theirs, are passed over: they were kept with another list or class. */
    readonly passOver?: boolean;
  } = {},
): ChartFile {
  const given = checked(chartFileSchema, value);
  const wanted = asked.list ?? given.list;
  const list = lists.find((one) => one.id === wanted);
  const classes = list?.classes.map((one) => one.id) ?? [soleClass];
  const cls = asked.class ?? given.class ?? classes[0]!;
  const own = given.own_tests.map(({ limit, ...test }) => ({
    ...test,
    limits: Object.fromEntries([[cls, { ...limit, source: limit.source ?? ownSource }]]),
  }));
  const groups = [...new Set([...(list?.groups ?? []), ...own.map((test) => test.group)])];
  const known = list?.dimensions ?? [];
  gather((say) => {
    if (wanted !== undefined && !list) say('list', wanted, among(lists.map((one) => one.id)));
    if (!classes.includes(cls)) say('class', cls, among(classes));
    for (const [key, size] of Object.entries(given.dimensions)) {
      const its = known.find((one) => one.key === key);
      // Own tests may go by sizes of their own.
      if (its && (size < its.low || size > its.high))
        say(`dimensions.${key}`, size, `${its.low} to ${its.high} mm`);
    }
    testsFit(
      own,
      {
        groups,
        classes: [cls],
        dimensions: [...known.map((one) => one.key), ...Object.keys(given.dimensions)],
        taken: list?.tests ?? [],
      },
      'own_tests',
      say,
    );
    given.limits.forEach((one, k) => {
      if (!list?.tests.some((test) => test.id === one.test))
        say(`limits[${k}].test`, one.test, 'a test of the list');
      limitFits(one, `limits[${k}]`, say);
    });
    given.left_out.forEach((one, k) => {
      if (!list?.tests.some((test) => test.id === one.test))
        say(`left_out[${k}].test`, one.test, 'a test of the list');
    });
  });

  const tests = [...(list?.tests ?? []).map((test) => withOwnLimit(test, given.limits, cls)), ...own].filter(
    (test) => !given.left_out.some((one) => one.test === test.id),
  ) as AcceptanceTest[];
  const dimensions = {
    ...Object.fromEntries(known.map((one) => [one.key, one.value])),
    ...given.dimensions,
  };
  const results = asked.passOver
    ? given.results.filter((one) => fitting(one, tests, cls, dimensions))
    : given.results;
  resultsFit(results, tests, cls, dimensions);
  const question = given.kit === undefined ? undefined : kitOf(given.kit, tests);
  const { machine, note, condition, done } = given;
  return {
    ...(list ? { list } : {}),
    class: cls,
    dimensions,
    machine: machine as MachineTold,
    ...(note === undefined ? {} : { note }),
    ...(condition ? { condition } : {}),
    ...(done ? { done } : {}),
    tests,
    groups,
    results: Object.fromEntries(results.map(({ test, ...both }) => [test, both as Results])),
    ...(question ? { kit: question.kit } : {}),
    setups: question?.setups ?? [],
    left_out: given.left_out,
  };
}

function withOwnLimit(
  test: AcceptanceTest,
  limits: z.output<typeof chartFileSchema>['limits'],
  cls: string,
): AcceptanceTest {
  const mine = limits.find((one) => one.test === test.id);
  if (!mine) return test;
  const { test: _test, source = ownSource, ...limit } = mine;
  return { ...test, limits: { ...test.limits, [cls]: { ...limit, source } as ClassLimit } };
}

function fitting(
  result: z.output<typeof chartFileSchema>['results'][number],
  ...about: [readonly AcceptanceTest[], string, Readonly<Record<string, number>>]
): boolean {
  try {
    resultsFit([result], ...about);
    return true;
  } catch (failure) {
    if (failure instanceof BadInput) return false;
    throw failure;
  }
}

function resultsFit(
  results: z.output<typeof chartFileSchema>['results'],
  tests: readonly AcceptanceTest[],
  cls: string,
  dimensions: Readonly<Record<string, number>>,
): void {
  const locals = tests.filter((test) => {
    const limit = test.limits[cls];
    return limit && localOf(limit, test.by === undefined ? undefined : dimensions[test.by]);
  });
  const ids = [...tests.map((test) => test.id), ...locals.map((test) => test.id + localSuffix)];
  const seen = new Set<string>();
  gather((say) =>
    results.forEach(({ test: id, first, final }, k) => {
      const at = `results[${k}]`;
      if (!ids.includes(id))
        say(
          `${at}.test`,
          quoted(id),
          `a test of this chart, or one with ${localSuffix} behind it: ${ids.slice(0, 6).join(', ')} …`,
        );
      if (seen.has(id)) say(`${at}.test`, quoted(id), 'each line once');
      seen.add(id);
      if (!first && !final) say(at, 'neither first nor final', 'one of them, or both');
      const test = tests.find((one) => one.id === id);
      for (const [when, one] of Object.entries({ first, final })) {
        if (!one) continue;
        if (one.over_mm !== undefined && test?.kind !== 'slope')
          say(
            `${at}.${when}.over_mm`,
            one.over_mm,
            'it to be left out: only a slope may be measured over another length',
          );
        if (one.shared_um !== undefined && !(one.doubt_um !== undefined && one.shared_um <= one.doubt_um))
          say(`${at}.${when}.shared_um`, one.shared_um, 'no more than doubt_um, of which it is a part');
        if (one.value_um < 0 && (test ? test.limits[cls]?.sense === 'size' : id.endsWith(localSuffix)))
          say(`${at}.${when}.value_um`, one.value_um, '0 or above: it has only a size');
      }
    }),
  );
}

/** The kit's question with the chart's lines as its targets, which the file need not repeat. */
function kitOf(kit: { setups?: unknown; targets?: unknown }, tests: readonly AcceptanceTest[]) {
  const named = Array.isArray(kit.setups)
    ? kit.setups.map((one) => (one as { target?: unknown } | null)?.target)
    : [];
  const wanted = tests.filter((test) => named.includes(test.id));
  const targets = (wanted.length ? wanted : tests.slice(0, 100)).map((test) =>
    test.kind === 'slope' ? { name: test.id, low_urad: -1, high_urad: 1 } : { name: test.id, high_um: 1 },
  );
  try {
    return kitQuestion({ ...kit, targets });
  } catch (failure) {
    if (!(failure instanceof BadInput)) throw failure;
    throw new BadInput(failure.issues.map((issue) => ({ ...issue, path: `kit.${issue.path}` })));
  }
}
