/**
 * The same reading with its sign turned, as a person would write it: "+6.5" and "6.5" give "−6.5", "−6.5" gives "+6.5".
 * Words are kept: "half thou" gives "−half thou".
 */
export function turnedText(typed: string): string {
  const text = typed.trim();
  if (/^[-−–]/.test(text)) return `+${text.slice(1).trim()}`;
  return `−${text.replace(/^\+/, '').trim()}`;
}
