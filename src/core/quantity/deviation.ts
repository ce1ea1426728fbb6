import { doNotAddUp, refuse, type Unreadable, unreadSentence } from './refusal.ts';
import { inUnit, plain, waysToWrite } from './show.ts';
import { addUp, readSpoken, type Spoken, shown, type Unread } from './spoken.ts';
import { clean, type DeviationUnit, deviationWords, size_um, systemOf, unitSign } from './unit.ts';

/** A deviation that was understood. */
export interface DeviationRead {
  readonly ok: true;
  readonly typed: string;
  /** µm, with its sign. */
  readonly um: number;
  /** The unit the column is in. */
  readonly unit: DeviationUnit;
  /** What was understood, in the column's unit: "+0.5 thou". */
  readonly echo: string;
  /** The same in the other system: "+12.7 µm". */
  readonly echoOther: string;
}

/** The longest way an indicator goes: two inches of plunger. */
const most_um = 50_800;
/** Below this nothing a shop owns can see anything. */
const least_um = 1e-4;

/**
 * A bare figure in a thou or tenths column may be inches out of habit (`-.0005`). Below `inches` it can only be that:
 * the column's unit would make it less than a millionth of an inch. From there up to `ask` it could be either, and is refused.
 */
const inchHabit: Partial<Record<DeviationUnit, { readonly inches: number; readonly ask: number }>> = {
  thou: { inches: 0.001, ask: 0.05 },
  tenths: { inches: 0.01, ask: 0.05 },
};

/**
 * A reading as spoken at the bench: `+7`, `-.0005`, `5 tenths`, `half thou`, `1 1/2 thou`, `12um`, `1 thou 2 tenths`.
 *
 * A bare number takes the unit of its column; only in thou and tenths a number below a millionth of an inch is taken
 * as inches (`-.0005`), which the echo shows. What could mean two things is refused: a comma, `mil`, leading noughts
 * without a point, `.015` in a thou column. `tenths` are always tenths of a thou.
 *
 * @example readDeviation('half thou', 'thou')   // {ok: true, um: 12.7, echo: '+0.5 thou', echoOther: '+12.7 µm', …}
 */
export function readDeviation(typed: string, column: DeviationUnit): DeviationRead | Unreadable {
  const spoken = readSpoken(typed, deviationWords);
  if (!spoken.ok) return { ok: false, why: unreadWhy(spoken, column) };
  const um = deviationOf(spoken, column);
  if (typeof um !== 'number') return um;
  const asTyped = spoken.terms.every((term) => (term.unit ?? column) === column);
  return {
    ok: true,
    typed,
    um,
    unit: column,
    echo: inUnit(um, column, asTyped ? 6 : 4),
    echoOther: inUnit(um, otherUnit(um, column), 4),
  };
}

/** The unit of the other system in which a deviation is best heard. */
function otherUnit(um: number, unit: DeviationUnit): DeviationUnit {
  if (systemOf(unit) === 'inch') return 'um';
  return um !== 0 && Math.abs(um) < size_um.thou ? 'tenths' : 'thou';
}

/** What was said, µm, or why it cannot be a reading. */
function deviationOf(spoken: Spoken<keyof typeof size_um>, column: DeviationUnit): number | Unreadable {
  const { terms, figures } = spoken;
  const first = terms[0]!;
  let unit = column;
  if (first.unit === undefined && figures !== undefined) {
    const taken = bareFigure(figures, first.value, column);
    if (typeof taken !== 'string') return taken;
    unit = taken;
  }
  const sum = addUp(spoken, size_um, size_um[unit]);
  if (sum === undefined) return refuse(doNotAddUp(waysToWrite(7 * size_um[column], column)));
  if (!Number.isFinite(sum)) return refuse('That number is too large to be read.');
  const um = clean(sum);
  const said = `${plain(first.value, 4)} ${unitSign[first.unit ?? unit]}`;
  if (Math.abs(um) > most_um)
    return refuse(
      `${said} is more than an indicator travels (${plain(most_um / size_um[column], 3)} ${unitSign[column]}). Is the unit right?`,
    );
  if (um !== 0 && Math.abs(um) < least_um)
    return refuse(`${said} is less than anything an instrument shows. Write 0 if it is nothing.`);
  return um;
}

/** Which unit a bare figure takes, or why that cannot be told. */
function bareFigure(figures: string, value: number, column: DeviationUnit): DeviationUnit | Unreadable {
  const here = unitSign[column];
  if (/^0\d/.test(figures) && value !== 0) {
    const inches = Number(`.${figures.replace(/\D/g, '')}`);
    return refuse(
      `“${shown(figures)}” has no point: it may be .${shown(figures)} or ${plain(value, 4)}. Write ${plain(value, 4)} ${here} or ${plain(inches, 4)} in.`,
    );
  }
  const habit = inchHabit[column];
  if (!habit || value === 0 || value >= habit.ask) return column;
  if (value < habit.inches) return 'in';
  return refuse(
    `“${shown(figures)}” may be ${plain(value, 4)} ${here} or ${plain((value * size_um.in) / size_um.thou, 4)} thou. Write ${plain(value, 4)} ${here}, or ${figures} in.`,
  );
}

/** The column's unit, or the one the misspelt word begins like. */
function likelyUnit(rest: string, column: DeviationUnit): DeviationUnit {
  const word = rest.toLowerCase();
  if (/^te/.test(word)) return 'tenths';
  if (/^t/.test(word)) return 'thou';
  if (/^(u|mic)/.test(word)) return 'um';
  if (/^m/.test(word)) return 'mm';
  if (/^i/.test(word)) return 'in';
  return column;
}

/** Why a deviation could not be read, with ways to write what was probably meant. */
function unreadWhy(unread: Unread, column: DeviationUnit): string {
  const unit = likelyUnit(unread.rest, column);
  const value = unread.value ?? 7;
  const within = value * size_um[unit] <= most_um && value * size_um[unit] >= least_um;
  const write = `Write ${waysToWrite((within ? value : 7) * size_um[unit], unit)}.`;
  return unreadSentence(unread, write);
}
