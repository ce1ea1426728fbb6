import { BadInput } from '../../contract/refusal.ts';
import type { TableColumn } from '../../core/quantity/table-column.ts';
import type { Drawn, Draws } from '../../core/survey/monte-carlo.ts';

const most = 100_000;

/**
 * How often to draw, from `--draws` and `--seed`; nothing when it was not asked for.
 * @throws BadInput
 */
export function drawsOf(options: { readonly draws?: string; readonly seed?: string }): Draws | undefined {
  if (options.draws === undefined) return undefined;
  const draws = Number(options.draws);
  const seed = Number(options.seed ?? 1);
  if (!(Number.isInteger(draws) && draws >= 100 && draws <= most))
    throw new BadInput([
      { path: '--draws', found: options.draws, expected: `a whole number from 100 to ${most}` },
    ]);
  if (!Number.isSafeInteger(seed))
    throw new BadInput([{ path: '--seed', found: `${options.seed}`, expected: 'a whole number' }]);
  return { draws, seed };
}

/**
 * A number from an option; nothing when it was not given.
 * @throws BadInput  no number, or below `least`: named by its option, not by the key it goes to
 */
export function optionNumber(
  option: string,
  text: string | undefined,
  what: string,
  least: number,
): number | undefined {
  if (text === undefined) return undefined;
  const value = Number(text);
  if (text.trim() !== '' && Number.isFinite(value) && value >= least) return value;
  throw new BadInput([{ path: option, found: JSON.stringify(text), expected: what }]);
}

/** One width as drawn, in a line. */
export const drawnText = (
  { draws, seed }: Draws,
  what: string,
  drawn: Drawn,
  { bare, spread, unit }: TableColumn,
): string =>
  `drawn      ${draws} times (seed ${seed}): ${what} ${bare(drawn.mean)} ${unit}, sd ${spread(drawn.sd)}, 19 in 20 from ${bare(drawn.low)} to ${bare(drawn.high)} ${unit}`;
