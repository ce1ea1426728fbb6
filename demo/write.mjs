// Writes the demo jobs, demo/*.job.json, anew: node demo/write.mjs (after a change of planner, template or simulated machine).
import { writeFileSync } from 'node:fs';
import { runnerImport } from 'vite';

const load = async (file) => (await runnerImport(file)).module;
const { makeDemo } = await load('./demo/make-demo.ts');
const { jobFileText } = await load('./src/contract/job-file.ts');
const { steer } = await load('./src/shop/steer.ts');
const { solveWithHighs } = await load('./src/adapters/solver/highs.ts');

const { file, answers } = await makeDemo((input) => steer(input, solveWithHighs));
writeFileSync('demo/saddle.job.json', jobFileText(file));
answers.forEach((answer, k) => {
  const features = answer.estimate.features.map(
    (feature) => `${feature.name} ${feature.value.toFixed(1)} ± ${(2 * feature.sd).toFixed(1)} µrad`,
  );
  console.log(`round ${k + 1}: ${answer.plan.action}; ${features.join('; ')}`);
});

const { latheRebuild, millRebuild } = await load('./demo/make-rebuilds.ts');
for (const made of [latheRebuild(), await millRebuild((input) => steer(input, solveWithHighs))]) {
  const name = made.id.replace('demo-', '');
  writeFileSync(`demo/${name}.job.json`, jobFileText(made));
  console.log(`${name}: ${made.entries.length} entries`);
}
