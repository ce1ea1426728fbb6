import { type ParseError, parseTree, printParseErrorCode } from 'jsonc-parser';
import type { z } from 'zod';

/** One thing wrong with an input: where, what was found, what is expected. */
export interface Issue {
  /** `rounds[0].sweeps[0].readings_um`; empty for the whole input. */
  readonly path: string;
  readonly found: string;
  readonly expected: string;
}

/** An input that cannot be taken, with all that is wrong with it at once. Made only in contract/. */
export class BadInput extends Error {
  readonly issues: readonly Issue[];
  constructor(issues: readonly Issue[]) {
    super(issues.map(issueText).join('\n'));
    this.name = 'BadInput';
    this.issues = issues;
  }
}

/** *where: what was found; what is expected* */
export const issueText = (issue: Issue): string =>
  `${issue.path === '' ? 'input' : issue.path}: ${issue.found}; expected ${issue.expected}`;

const longestFound = 60;
/** More things wrong than this are counted, not listed: a refusal stays readable whatever was sent. */
const mostIssues = 50;

const shortened = (text: string): string =>
  text.length > longestFound ? `${text.slice(0, longestFound)}…` : text;

/** A value as it is quoted in a refusal: short, and never the whole of a large input. */
export function quoted(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value);
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (value !== null && typeof value === 'object') return 'an object';
  return shortened(JSON.stringify(value));
}

/** `['rounds', 0, 'sweeps']` → `rounds[0].sweeps`; keys that are not plain words are quoted. */
export function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`;
    const key = shortened(String(step));
    if (!/^[A-Za-z_][A-Za-z0-9_]*$/.test(key)) return `${text}[${JSON.stringify(key)}]`;
    return text === '' ? key : `${text}.${key}`;
  }, '');
}

const kinds: Record<string, string> = {
  number: 'a finite number',
  int: 'a whole number',
  string: 'text',
  array: 'a list',
  object: 'an object',
  record: 'an object',
  boolean: 'true or false',
  tuple: 'a list of fixed length',
};

function expectedBy(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return kinds[issue.expected] ?? issue.expected;
    case 'too_small':
      return `${issue.inclusive ? 'at least' : 'more than'} ${issue.minimum}${counted(issue.origin, issue.minimum)}`;
    case 'too_big':
      return `${issue.inclusive ? 'at most' : 'less than'} ${issue.maximum}${counted(issue.origin, issue.maximum)}`;
    case 'invalid_value':
      return issue.values.map((value) => JSON.stringify(value)).join(' or ');
    case 'not_multiple_of':
      return `a multiple of ${issue.divisor}`;
    case 'invalid_format':
      return issue.format;
    default:
      return issue.message;
  }
}

function counted(origin: string, many: number | bigint): string {
  const isOne = Number(many) === 1;
  if (origin === 'array' || origin === 'set') return isOne ? ' entry' : ' entries';
  return origin === 'string' ? ` character${isOne ? '' : 's'}` : '';
}

function issuesFrom(issue: z.core.$ZodIssue, before: readonly PropertyKey[] = []): Issue[] {
  const path = [...before, ...issue.path];
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map((key) => ({
      path: pathText([...path, key]),
      found: 'a key that is not known here',
      expected: 'it to be left out',
    }));
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    // The branch that went wrong last is the one that was meant.
    const nearest = [...issue.errors].sort((a, b) => a.length - b.length)[0]!;
    if (nearest.length > 0) return nearest.flatMap((inner) => issuesFrom(inner, path));
  }
  if (issue.code === 'invalid_key' || issue.code === 'invalid_element')
    return issue.issues.flatMap((inner) => issuesFrom(inner, path));
  const found =
    issue.code === 'too_small' && issue.origin === 'array' ? quoted(issue.input) : quoted(issue.input);
  return [{ path: pathText(path), found, expected: expectedBy(issue) }];
}

/**
 * Holds a value to a schema.
 * @throws BadInput  with every issue at once
 */
export function checked<T extends z.ZodType>(schema: T, value: unknown): z.output<T> {
  const result = schema.safeParse(value, { reportInput: true });
  if (result.success) return result.data;
  const issues = result.error.issues.flatMap((issue) => issuesFrom(issue));
  const more = issues.length - mostIssues;
  if (more <= 0) throw new BadInput(issues);
  throw new BadInput([
    ...issues.slice(0, mostIssues),
    { path: '', found: `${more} more things wrong`, expected: 'those above to be put right first' },
  ]);
}

/**
 * JSON text → value.
 * @throws BadInput  naming the line where the text stops being JSON
 */
export function parsedJson(text: string): unknown {
  const plain = text.startsWith('\uFEFF') ? text.slice(1) : text;
  let value: unknown;
  try {
    value = JSON.parse(plain);
  } catch {
    throw new BadInput([notJson(plain)]);
  }
  if (/__proto__|\\u/.test(plain)) refuseProto(value);
  return value;
}

/** A key of this name is lost without a word where objects are copied, so it is refused where it stands. */
function refuseProto(value: unknown): void {
  const left: { node: unknown; path: PropertyKey[] }[] = [{ node: value, path: [] }];
  for (let one = left.pop(); one; one = left.pop()) {
    const { node, path } = one;
    if (node === null || typeof node !== 'object') continue;
    if (Object.hasOwn(node, '__proto__'))
      throw new BadInput([
        {
          path: pathText([...path, '__proto__']),
          found: 'a key that is not known here',
          expected: 'it to be left out',
        },
      ]);
    for (const [key, child] of Object.entries(node))
      if (child !== null && typeof child === 'object')
        left.push({ node: child, path: [...path, Array.isArray(node) ? Number(key) : key] });
  }
}

/** Where and how a text stops being JSON; looked for only once it is known not to be. */
function notJson(text: string): Issue {
  if (text.trim() === '') return { path: '', found: 'nothing', expected: 'JSON' };
  const errors: ParseError[] = [];
  try {
    parseTree(text, errors, { disallowComments: true, allowTrailingComma: false });
  } catch (failure) {
    if (!(failure instanceof RangeError)) throw failure;
    return { path: '', found: 'lists and objects nested thousands deep', expected: 'JSON' };
  }
  const first = errors[0];
  const offset = first?.offset ?? text.length;
  const line = text.slice(0, offset).split('\n').length;
  const at = text.slice(offset, offset + longestFound).split('\n')[0]!;
  return {
    path: `line ${line}`,
    found:
      at === '' ? 'the text breaks off' : `${JSON.stringify(at)} (${printParseErrorCode(first?.error ?? 0)})`,
    expected: 'JSON',
  };
}
