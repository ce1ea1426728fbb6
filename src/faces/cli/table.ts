/** Columns set under their heads: text to the left, figures to the right. */
export function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const wide = heads.map((head, c) => Math.max(head.length, ...rows.map((row) => (row[c] ?? '').length)));
  const figures = heads.map(
    (_, c) => rows.length > 0 && rows.every((row) => /^[+\u2212-]?[\d.]|^$/.test(row[c] ?? '')),
  );
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, c) => (figures[c] ? cell.padStart(wide[c]!) : cell.padEnd(wide[c]!)))
      .join('  ')
      .trimEnd();
  return [line(heads), line(wide.map((w) => '─'.repeat(w))), ...rows.map(line)].join('\n');
}
