// The page of the library: what src/index.ts lets out, with each docstring, signature and runnable example.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const opening = { '(': ')', '[': ']', '{': '}', '<': '>' };

/** Where the bracket that opens at `from` closes; `=>` closes nothing. */
function closing(text, from) {
  let depth = 0;
  for (let i = from; i < text.length; i++) {
    if (text.startsWith('=>', i)) i++;
    else if (text[i] in opening) depth++;
    else if (Object.values(opening).includes(text[i]) && --depth === 0) return i;
  }
  throw new RangeError('a bracket that does not close');
}

/** A declaration from its name up to its body. */
function signature(text, from) {
  const open = text.slice(from).search(/[(<]/) + from;
  let end = closing(text, open) + 1;
  if (text[open] === '<') end = closing(text, text.indexOf('(', end)) + 1;
  // What it gives, up to the body.
  for (; end < text.length; end++) {
    if (text.startsWith('=>', end) || (text[end] === '{' && !/[:|&]\s*$/.test(text.slice(0, end)))) break;
    if (text[end] in opening) end = closing(text, end);
  }
  return text
    .slice(from, end)
    .replace(/^export (async )?(function|const) /, '')
    .replace(/^(\w+)(?::[^=]*)? = (async )?/, '$1')
    .replace(/\s+/g, ' ')
    .replace(/,? \)/g, ')')
    .replace(/\( /g, '(')
    .trim();
}

const docOf = (comment) =>
  comment
    .replace(/^\/\*\*|\*\/\s*$/g, '')
    .split('\n')
    .map((line) => line.replace(/^\s*\* ?/, '').trimEnd())
    .join('\n')
    .trim()
    .replace(/\{@link (\w+)\}/g, '`$1`');

/** Everything that the door lets out, in its order. */
export function exported() {
  const door = readFileSync('src/index.ts', 'utf8');
  return [...door.matchAll(/^export (type )?\{([^}]*)\} from '([^']+)'/gm)].flatMap(
    ([, type, names, from]) => {
      const file = join('src', from);
      const text = readFileSync(file, 'utf8');
      return names
        .split(',')
        .map((name) => name.trim())
        .filter(Boolean)
        .map((given) => {
          const isType = type !== undefined || given.startsWith('type ');
          const [own, as = own] = given.replace(/^type /, '').split(' as ');
          const found = new RegExp(
            `((?:/\\*\\*(?:(?!\\*/)[\\s\\S])*\\*/\\s*)?)(export (?:async )?(?:function|const|class|interface|type) ${own}\\b)`,
          ).exec(text);
          const at = found ? found.index + found[1].length : -1;
          const isCalled = !isType && /^export (async )?(function|const)/.test(text.slice(at));
          return {
            name: as,
            file,
            isType,
            doc: found ? docOf(found[1]) : '',
            ...(isCalled ? { signature: signature(text, at).replace(new RegExp(`^${own}`), as) } : {}),
          };
        });
    },
  );
}

const folder = 'examples/library';

/** Scripts of examples, each with its parts: `// name: what it shows`, up to the next one. */
export const scripts = () =>
  readdirSync(folder)
    .filter((file) => file.endsWith('.mjs'))
    .map((file) => {
      const text = readFileSync(join(folder, file), 'utf8');
      const [head, ...parts] = text.split(/^(?=\/\/ [A-Za-z, ]+: )/m);
      return {
        file: join(folder, file),
        title: /^\/\/ (.+)$/m.exec(head)[1],
        imports: head.replace(/^\/\/.*\n/gm, '').trim(),
        parts: parts.map((part) => {
          const [, names, shows] = /^\/\/ ([A-Za-z, ]+): (.*)\n/.exec(part);
          return { names: names.split(', '), shows, code: part.replace(/^.*\n/, '').trim() };
        }),
      };
    });

/** @param said  what each script prints, by its file */
export function libraryPage(said) {
  const all = exported();
  const entry = ({ name, doc, signature: how, file }) =>
    `### ${name}\n\n\`${how}\`\n\n${doc.replaceAll('\n', '  \n')}\n\n[${file}](../${file})`;
  const groups = scripts().map(({ file, title, imports, parts }) => {
    const names = parts.flatMap((part) => part.names);
    const about = all.filter((one) => names.includes(one.name) && one.signature);
    return `## ${title}

${about.map(entry).join('\n\n')}

### ${title}: run it

\`\`\`js
${imports}

${parts.map(({ names: which, shows, code }) => `// ${which.join(', ')}: ${shows}\n${code}`).join('\n\n')}
\`\`\`

prints

\`\`\`text
${said[file]}
\`\`\``;
  });
  const types = all
    .filter((one) => one.isType)
    .toSorted((a, b) => (a.name < b.name ? -1 : 1))
    .map(
      ({ name, doc, file }) =>
        `| \`${name}\` | ${doc.split('\n')[0].replaceAll('|', '\\|')} | [${file}](../${file}) |`,
    );
  return `# Library

Written by \`npm run build && node scripts/library.mjs\` from the docstrings of what \`src/index.ts\` lets out; every example is run by the tests, and what stands under it is what it
printed. Everything else in the package may change from one version to the next.

\`\`\`js
import { steer, steerInput, solveWithHighs } from 'waywright';
\`\`\`

Every verb has two halves: one that takes a value as it came (\`steerInput\`) and throws \`BadInput\` naming each field that is wrong, and one that answers (\`steer\`). Shapes are in
[contract.md](contract.md); keys end in their unit (\`_mm\`, \`_um\`, \`_urad\`), signs are those of [signs.md](signs.md), and where a formula comes from stands in [method.md](method.md). An
answer with \`ok: false\` says which limit binds. Nothing reads the disk or the network but \`decodePhoto\`, which is given bytes.

${groups.join('\n\n')}

## Refusals

\`BadInput\` is what every \`…Input\` throws: \`issues\` lists {\`path\`, \`found\`, \`expected\`}, and its message says them one a line.

## Types

| type | is | file |
| --- | --- | --- |
${types.join('\n')}
`;
}
