// Medians of what a person waits for, as one table: npm run build, then node bench/run.mjs [quick] [write]; with write, docs/bench.md too
// The slide: three pads of eight zones each. Beside each figure stands its aim, HiGHS' own share of it, and a named
// reference timed in the same run, so that a slow machine shows in both.
import { existsSync } from 'node:fs';
import { estimateTiming } from './estimate.mjs';
import { growthTiming } from './growth.mjs';
import { pageTiming } from './page.mjs';
import { depthsTiming, nextRoundTiming, passesTiming } from './plan.mjs';
import { printTiming } from './print.mjs';
import { restTiming } from './rest.mjs';
import { siteTiming } from './site.mjs';
import { steerTiming } from './steer.mjs';
import { storeTiming } from './store.mjs';
import { surveyTiming } from './survey.mjs';
import { machine, table, writePage } from './table.mjs';

if (!existsSync(new URL('../dist/core/rest/rest.js', import.meta.url))) {
  console.error('bench: dist/ is missing; run npm run build first');
  process.exit(1);
}
const quick = process.argv.includes('quick');
const timings = [];
for (const timing of [
  estimateTiming,
  depthsTiming,
  passesTiming,
  nextRoundTiming,
  restTiming,
  siteTiming,
  steerTiming,
  storeTiming,
  surveyTiming,
  printTiming,
  pageTiming,
])
  timings.push(...(await timing(quick)));
const grown = await growthTiming(quick);
const text = `${table(timings)}\n\nHow it grows: each against the smallest of its kind.\n\n${table(grown)}\n\n${machine()}`;
console.log(text);
if (process.argv.includes('write')) writePage(`\`\`\`text\n${text}\n\`\`\``);
