// Which script the page is made of, as one table in docs/bench.md: npm run build, then node bench/bundles.mjs [write]
import { brotliCompressSync, constants } from 'node:zlib';
import { build } from 'vite';
import { writePage } from './table.mjs';

const root = new URL('..', import.meta.url).pathname;

/** The page's chunks as the build makes them, nothing written. */
async function chunksOf() {
  const { output } = await build({
    configFile: `${root}src/faces/web/vite.config.ts`,
    logLevel: 'error',
    build: { write: false },
  });
  return output.filter((one) => one.type === 'chunk');
}

/** As the build lays it beside the file for browsers that take it, bytes. */
const onTheWire = (code) =>
  brotliCompressSync(Buffer.from(code), { params: { [constants.BROTLI_PARAM_QUALITY]: 10 } }).length;

/** A file of ours by its place in src, a package by its name. */
const sourceOf = (id) => {
  const named = /node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(id.split('\0').at(-1));
  return named ? named[1] : id.split('/src/').at(-1);
};

/** What weighs most in a chunk: packages, and folders of ours. */
function heaviest({ modules }) {
  const shares = new Map();
  for (const [id, { renderedLength }] of Object.entries(modules)) {
    const source = sourceOf(id);
    const place = source.includes('.') ? source.split('/').slice(0, -1).join('/') : source;
    shares.set(place, (shares.get(place) ?? 0) + renderedLength);
  }
  return [...shares]
    .sort((a, b) => b[1] - a[1])
    .slice(0, 3)
    .map(([place]) => place)
    .join(', ');
}

const kB = (bytes) => (bytes / 1000).toFixed(bytes < 10_000 ? 1 : 0);

/** All that a chunk brings along at once, itself among it. */
function along(chunk, chunks, found = new Set()) {
  if (found.has(chunk)) return found;
  found.add(chunk);
  for (const name of chunk.imports) {
    const one = chunks.find(({ fileName }) => fileName === name);
    if (one) along(one, chunks, found);
  }
  return found;
}

/** Rows as a Markdown table, its columns of figures to the right; spaced as the formatter wants it. */
function markdown(heads, rows) {
  const wide = heads.map((head, c) => Math.max(head.length, ...rows.map((row) => row[c].length)));
  const isFigure = (c) => heads[c].endsWith('kB');
  const line = (cells) =>
    `| ${cells.map((cell, c) => (isFigure(c) ? cell.padStart(wide[c]) : cell.padEnd(wide[c]))).join(' | ')} |`;
  const rule = wide.map((w, c) => (isFigure(c) ? `${'-'.repeat(w - 1)}:` : '-'.repeat(w)));
  return [line(heads), line(rule), ...rows.map(line)].join('\n');
}

/** First the script of the first screen; then each screen that is fetched when it is asked for; last what several of them share. */
function tableOf(chunks) {
  const wire = new Map(chunks.map((one) => [one, onTheWire(one.code)]));
  const sum = (some, of) => [...some].reduce((total, one) => total + of(one), 0);
  const raw = ({ code }) => Buffer.byteLength(code);
  const entry = chunks.find((one) => one.isEntry);
  const first = along(entry, chunks);
  const size = (some) => [kB(sum(some, raw)), kB(sum(some, (one) => wire.get(one)))];
  const bySize = (some) => [...some].sort((a, b) => wire.get(b) - wire.get(a));
  const asked = chunks.filter((one) => one.isDynamicEntry && !first.has(one));
  const shared = chunks.filter((one) => !one.isDynamicEntry && !first.has(one));
  return markdown(
    ['script', 'raw, kB', 'on the wire, kB', 'what weighs most in it'],
    [
      ['**the first screen, all of it**', ...size(first), `${first.size} files`],
      ...bySize(first)
        .slice(0, 4)
        .map((one) => [one === entry ? 'of it: main.tsx' : 'of it: shared', ...size([one]), heaviest(one)]),
      ...bySize(asked).map((one) => [sourceOf(one.facadeModuleId), ...size([one]), heaviest(one)]),
      ['shared by those', ...size(shared), bySize(shared).slice(0, 3).map(heaviest).join('; ')],
      ['**all**', ...size(chunks), `${chunks.length} files`],
    ],
  );
}

const text = tableOf(await chunksOf());
console.log(text);
if (process.argv.includes('write')) writePage(text, 'bundles');
