import { expect, it } from 'vitest';
import { about, type VerbName } from '../../src/faces/cli/about.ts';
import type { Doors } from '../../src/faces/cli/doors.ts';
import { run } from '../../src/faces/cli/run.ts';
import { everyVerbNamed, loadVerb, type MoreDoors } from '../../src/faces/cli/verbs.ts';

/** No verb may touch the world while it says what it does. */
const more = new Proxy({}, { get: () => ({}) }) as unknown as MoreDoors;

async function help(...words: string[]): Promise<string> {
  let said = '';
  const keep = (text: string) => {
    said += `${text}\n`;
  };
  const doors = { say: keep, complain: keep } as Doors;
  const verbs = words.length === 0 ? [everyVerbNamed] : [await loadVerb(words[0] as VerbName, more)];
  expect(await run([...words, '--help'], doors, verbs, '0')).toBe(0);
  return said.trimEnd();
}

/** Names in the list of commands, `help` left out. */
const commandsIn = (text: string): string[] =>
  [...(text.split('\nCommands:\n')[1] ?? '').split('\n\n')[0]!.matchAll(/^ {2}([a-z][a-z-]*)/gm)]
    .map(([, name]) => name!)
    .filter((name) => name !== 'help');

const fenced = (text: string): string => `\`\`\`text\n${text}\n\`\`\``;

async function page(): Promise<string> {
  const parts = [
    `# Command line

Written by \`node scripts/command-line.mjs\` from what each verb says with \`--help\`; a test holds it to that. Read readings and files as
[contract.md](contract.md) has them, signs as [signs.md](signs.md). A whole job by hand: [guided-saddle.md](guided-saddle.md).

| exit | means |
| --- | --- |
| 0 | answered |
| 2 | bad input: the file, the field or line, what was found and what is expected; nothing was written |
| 3 | well-formed, but no answer exists: the message says which limit binds |

With \`--json\` a verb writes one JSON document and nothing else. \`-\` in place of a file is standard input. The workshop is the folder that \`WAYWRIGHT_DATA\` names, or
\`./workshop\`.

${fenced(await help())}`,
  ];
  for (const verb of Object.keys(about)) {
    const text = await help(verb);
    parts.push(`## ${verb}\n\n${fenced(text)}`);
    for (const name of commandsIn(text))
      parts.push(`### ${verb} ${name}\n\n${fenced(await help(verb, name))}`);
  }
  return `${parts.join('\n\n')}\n`;
}

it('docs/command-line.md is what --help says: else run node scripts/command-line.mjs', async () => {
  await expect(await page()).toMatchFileSnapshot('../../docs/command-line.md');
});
