// From a fresh clone to a proven saddle and its PDF, no hand in between: installs and builds what is missing, makes a practice
// machine in an empty workshop, measures, blues and scrapes it as the tool says until it says stop, writes the report, and holds
// what the tool told to the truth that was hidden from it. Leaves with 0 when the saddle is proven.
// Usage: node examples/saddle.mjs [--in FOLDER] [--seed N] [--working] [--built]
// --built takes the clone as it is built.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { untilStop } from './rebuild/bench.mjs';
import { openShop } from './rebuild/shop.mjs';

const { values } = parseArgs({
  options: {
    in: { type: 'string' },
    seed: { type: 'string', default: '1' },
    working: { type: 'boolean', default: false },
    built: { type: 'boolean', default: false },
  },
});
const root = fileURLToPath(new URL('..', import.meta.url));
if (!values.built) {
  const ready = spawnSync(process.execPath, ['scripts/ready.mjs', 'start'], { cwd: root, stdio: 'inherit' });
  if (ready.status !== 0) process.exit(ready.status ?? 1);
}

const began = Date.now();
const shop = openShop(values.in ?? mkdtempSync(join(tmpdir(), 'waywright-saddle-')));
const id = 'saddle';
await shop.say(['job', 'practise', '--seed', values.seed, '--title', 'Invented saddle', '--id', id]);
await shop.write(id, [
  { kind: 'note', text: 'Invented: a simulated saddle. Nothing here was measured on metal.' },
]);
const { plan } = await shop.ask('job', 'show', id);
const isWorking = /^ +( {4}|·)/;
const { rounds, passes, stop } = await untilStop({
  shop,
  id,
  plan,
  tell: (line) => (values.working || !isWorking.test(line)) && console.log(line),
  measured: async () => [...(await shop.ask('job', 'measure', id)), await shop.ask('job', 'blue', id)],
});
const pdf = join(shop.folder, 'saddle.pdf');
console.log(`\n${await shop.say(['chart', id, '--pdf', pdf])}`);
console.log(`\n${await shop.say(['job', 'truth', id])}`);
const proven = stop.plan.alignment.verdict === 'proven' && stop.plan.bearing.verdict === 'proven';
const kilobytes = Math.round(statSync(pdf).size / 1000);
console.log(
  `\nAlignment ${stop.plan.alignment.verdict}, bearing ${stop.plan.bearing.verdict} after ${rounds} rounds and ${passes} passes on zones; ${shop.calls()} calls of waywright in ${((Date.now() - began) / 1000).toFixed(0)} s. Report: ${pdf}, ${kilobytes} kB.`,
);
process.exitCode = proven ? 0 : 1;
