/** Hours as typed: nothing, understood, or why not. */
export type HoursRead =
  | { readonly is: 'empty' }
  | { readonly is: 'read'; readonly hours: number; readonly echo: string }
  | { readonly is: 'wrong'; readonly why: string };

const most = 10_000;

/**
 * Reads hours: "2.5", "2,5", "2 h 30", "2:30", "45 min".
 * @returns why not, in words for whoever typed it
 */
export function readHours(text: string): HoursRead {
  const typed = text.trim();
  if (typed === '') return { is: 'empty' };
  const plain = /^(\d+(?:[.,]\d+)?)\s*(h|hours?|min|minutes?)?$/i.exec(typed);
  const clock = /^(\d+)\s*(?:h|:)\s*(\d{1,2})(?:\s*min)?$/i.exec(typed);
  let hours: number;
  if (plain) {
    const value = Number(plain[1]!.replace(',', '.'));
    hours = plain[2]?.toLowerCase().startsWith('m') ? value / 60 : value;
  } else if (clock && Number(clock[2]) < 60) hours = Number(clock[1]) + Number(clock[2]) / 60;
  else return { is: 'wrong', why: `I cannot read “${typed}” as hours. Write 2.5, 2:30 or 45 min.` };
  if (hours > most) return { is: 'wrong', why: `I read ${hours} hours; expected no more than ${most}.` };
  const rounded = Math.round(hours * 100) / 100;
  return { is: 'read', hours: rounded, echo: `${rounded}\u00a0h` };
}
