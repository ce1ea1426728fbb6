import { doNotAddUp, refuse, type Unreadable, unreadSentence } from './refusal.ts';
import { plain } from './show.ts';
import { addUp, readSpoken } from './spoken.ts';
import { tidy } from './token.ts';
import { angleWords, clean, size_urad } from './unit.ts';

/** An angle between faces that was understood. */
export interface AngleRead {
  readonly ok: true;
  readonly typed: string;
  readonly deg: number;
  /** "90°". */
  readonly echo: string;
}

/**
 * The angle of a V or a dovetail, degrees: `90`, `55.5°`, `60 deg 30 min`, `60° 30'`.
 *
 * A bare number is degrees. Refused: anything not above 0 and below 180.
 * @example readAngle("60° 30'")     // {ok: true, deg: 60.5, echo: '60.5°', …}
 */
export function readAngle(typed: string): AngleRead | Unreadable {
  const ways = 'Write 90, 55.5° or 60° 30 min.';
  // Behind degrees, ' and " can only be minutes and seconds.
  const text = tidy(typed).replace(
    /(°|deg\w*)(.*)$/i,
    (_, degrees: string, rest: string) => degrees + rest.replace("'", ' min ').replace('"', ' sec '),
  );
  const spoken = readSpoken(text, angleWords);
  if (!spoken.ok) return refuse(unreadSentence(spoken, ways));
  const sum = addUp(spoken, size_urad, size_urad.deg);
  if (sum === undefined) return refuse(doNotAddUp('60.5° or 60° 30 min'));
  const deg = clean(sum / size_urad.deg);
  if (!(deg > 0 && deg < 180))
    return refuse(`An angle between two faces is above 0° and below 180°. ${ways}`);
  return { ok: true, typed, deg, echo: `${plain(deg, 8)}°` };
}
