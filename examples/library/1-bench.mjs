// The Bench
import { readFileSync } from 'node:fs';
import {
  foldJob,
  jobFile,
  jobFileText,
  jobSteerInput,
  parsedJson,
  rest,
  restInput,
  solveWithHighs,
  steer,
  steerInput,
} from 'waywright';

const read = (path) => parsedJson(readFileSync(path, 'utf8'));

// steerInput, steer, solveWithHighs: an invented slide measured once, and the least passes that bring it in
const answer = await steer(steerInput(read('checks/data/cases/steer-3.json').input), solveWithHighs);
for (const { name, value, sd } of answer.estimate.features)
  console.log(`${name} ${value.toFixed(1)} ± ${(2 * sd).toFixed(1)}`);
console.log(answer.plan.action, answer.plan.zones.map((zone) => zone.passes_now).join(' '));

// restInput, rest: how a slide sits on what it touches
const sits = rest(restInput(read('checks/data/cases/rest-1.json').input));
console.log(sits.ok, `${(100 * sits.bearing_fraction).toFixed(0)} % of it bears`);

// parsedJson: text that stops being JSON is refused by its line
try {
  parsedJson('{"pads": [}');
} catch (refused) {
  console.log(refused.issues[0].path, refused.issues[0].expected);
}

// jobFile, foldJob, jobSteerInput, jobFileText: a job from its file, what is asked of it, and its file again to the letter
const text = readFileSync('demo/saddle.job.json', 'utf8');
const file = jobFile(parsedJson(text));
const job = foldJob(file.entries);
console.log(
  job.plan.title,
  `round ${job.round}`,
  jobSteerInput(job).rounds.length,
  jobFileText(file) === text,
);
