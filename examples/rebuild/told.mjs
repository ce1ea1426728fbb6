// What the tool answered, as lines for people, each with its working below it as the tool gives it.

/** Lines of working as a verb's JSON has them: what and formula, then the numbers put in. */
export const workingLines = (working) =>
  working.flatMap(({ what, formula, worked, source }) => [
    `  · ${what}: ${formula}${source === undefined ? '' : ` (source: ${source})`}`,
    `      ${worked}`,
  ]);

/** A verb's text with `--working`: what it says, and its working, each as lines. */
export function split(text) {
  const [said, working = ''] = text.split('\n\nWorking\n');
  const lines = working.split('\n').filter((line) => line !== '');
  const rows = [];
  for (const line of lines)
    if (/^ {2}\S/.test(line)) rows.push({ what: line.trim() });
    else if (line.trim().startsWith('source: ')) rows.at(-1).source = line.trim().slice(8);
    else if (rows.at(-1).formula === undefined) rows.at(-1).formula = line.trim();
    else rows.at(-1).worked = line.trim();
  return { said: said.split('\n'), working: workingLines(rows) };
}
