/**
 * A worked case is a file {input, expected}: an input kept together with the answer that an independent solver found.
 * Every verb takes such a file and answers its input.
 */
export function caseInput(value: unknown): unknown {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return value;
  const keys = Object.keys(value);
  const isCase = keys.length === 2 && keys.includes('input') && keys.includes('expected');
  return isCase ? (value as { input: unknown }).input : value;
}
