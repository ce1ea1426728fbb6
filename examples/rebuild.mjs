// Takes an invented machine from an empty start to its final chart and its PDF through the command line alone, and prints
// every step's numbers as the tool gave them, each with its working. The readings come from a simulated machine; nothing was
// measured on metal.
// Usage: node examples/rebuild.mjs [engine-lathe | vertical-knee-mill | surface-grinder …] [--in FOLDER] [--steps N] [--brief]
// --brief leaves the working out.
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { facts } from './rebuild/facts.mjs';
import { inventedMachine } from './rebuild/invented.mjs';
import { openShop } from './rebuild/shop.mjs';
import { rebuild } from './rebuild/steps.mjs';

const words = process.argv.slice(2);
const at = words.indexOf('--in');
const folder = at < 0 ? mkdtempSync(join(tmpdir(), 'waywright-rebuild-')) : words.splice(at, 2)[1];
const stepsAt = words.indexOf('--steps');
const limit = stepsAt < 0 ? undefined : Number(words.splice(stepsAt, 2)[1]);
const briefAt = words.indexOf('--brief');
const brief = briefAt >= 0 && words.splice(briefAt, 1).length > 0;
const isWorking = /^ +( {4}|·)/;
const tell = (line) => {
  if (!brief || !isWorking.test(line)) console.log(line);
};
const machines = words.length > 0 ? words : Object.keys(facts);
for (const id of machines)
  if (!Object.hasOwn(facts, id)) {
    console.error(`${id}: expected one of ${Object.keys(facts).join(', ')}`);
    process.exit(2);
  }

for (const id of machines) {
  const its = { ...facts[id] };
  const shop = openShop(join(folder, id));
  console.log(`\n${its.title.toUpperCase()}\n`);
  const began = Date.now();
  const end = await rebuild({ shop, machine: inventedMachine(its.seed), id, its, tell, limit });
  const minutes = ((Date.now() - began) / 60_000).toFixed(1);
  const { tally } = end;
  if (!tally) {
    console.log(
      `\nStopped after ${end.steps} step${end.steps === 1 ? '' : 's'}, ${shop.calls()} calls of waywright.`,
    );
    continue;
  }
  const all = tally.within + tally.outside + tally['not proven'] + tally['not measured'];
  console.log(`
${its.title}
  steps done              ${end.steps}
  rounds on benches       ${end.rounds}, ${end.passes} passes on zones
  tests                   ${all}: ${tally.within} within, ${tally.outside} outside, ${tally['not proven']} not proven, ${tally['not measured']} not measured
  calls of waywright      ${shop.calls()}, ${minutes} minutes in all
  report, table, drawing  ${end.pdf}, ${end.csv}, ${end.svg}
  what was asked          ${shop.folder}`);
}
