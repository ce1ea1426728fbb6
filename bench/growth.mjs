import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { solveWithHighs } from '../dist/adapters/solver/highs.js';
import { openSqlite } from '../dist/adapters/store/sqlite.js';
import { jobFile } from '../dist/contract/job-file.js';
import { estimateSlide } from '../dist/core/estimate/estimate-slide.js';
import { featureOf, poseOfRound } from '../dist/core/estimate/pose.js';
import { seededRandom } from '../dist/core/math/random.js';
import { planDepth } from '../dist/core/plan/depth.js';
import { planProblem } from '../dist/core/plan/problem.js';
import { rest } from '../dist/core/rest/rest.js';
import { planeZone } from '../dist/core/survey/plane-zone.js';
import { listJobs } from '../dist/shop/list-jobs.js';
import { grows } from './grows.mjs';
import { photosGrow } from './growth-photos.mjs';
import { roundsGrow } from './growth-rounds.mjs';
import { benchInput } from './slide.mjs';

/** Heights of a worn table strewn with `many` points. */
function table(many) {
  const random = seededRandom(5);
  const x_mm = Float64Array.from({ length: many }, () => 900 * random.even());
  const y_mm = Float64Array.from({ length: many }, () => 600 * random.even());
  const z_um = x_mm.map(
    (x, i) => 8 * (x / 900) ** 2 - 5 * (y_mm[i] / 600 - 0.4) ** 2 + random.normal(0, 0.7),
  );
  return { x_mm, y_mm, z_um };
}

/** The round-one saddle with so many zones on each of its three pads. */
const finer = (input, each) => ({
  ...input,
  slide: { ...input.slide, pads: input.slide.pads.map((pad) => ({ ...pad, zones: each })) },
  rounds: input.rounds.map(({ print, ...round }) => ({
    ...round,
    print: Object.fromEntries(
      Object.entries(print).map(([pad, shares]) => [
        pad,
        Array.from({ length: each }, (_, z) => shares[Math.floor((z * shares.length) / each)]),
      ]),
    ),
  })),
});

/** How each path grows with its work: points, zones, rounds, photos, jobs. */
export async function growthTiming(quick) {
  const seconds = quick ? 0.2 : 1;
  const input = await benchInput(1, 1);
  const points = await grows(
    'minimum zone',
    'points',
    [100, 1000, 10_000, 100_000],
    (many) => {
      const set = table(many);
      return () => planeZone(set);
    },
    { seconds },
  );
  const estimate = await grows(
    'estimate, 1 round',
    'zones a pad',
    [8, 16, 32],
    (each) => {
      const asked = finer(input, each);
      return () => estimateSlide(asked);
    },
    { seconds },
  );
  const depths = await grows(
    'depths (LP)',
    'zones a pad',
    [8, 16, 32],
    (each) => {
      const asked = finer(input, each);
      const pose = poseOfRound(asked.rounds[0]);
      const values = Object.fromEntries(asked.features.map((f) => [f.name, featureOf(pose, f).value]));
      const problem = planProblem(asked, values, asked.passes);
      return () => planDepth(problem, solveWithHighs);
    },
    { seconds },
  );
  const rests = await grows(
    'rest',
    'zones a pad',
    [8, 16, 32],
    (each) => {
      const { slide } = finer(input, each);
      const random = seededRandom(3);
      const gaps_um = slide.pads.map(() => Array.from({ length: each }, () => Math.abs(random.normal(8, 7))));
      const load = { force_N: 1500, at_mm: [0, 130, 120], direction: [0, 0, -1] };
      return () => rest({ slide, gaps_um, load, stiffness_N_per_mm3: 50, film_um: 3 });
    },
    { seconds },
  );
  const rounds = await roundsGrow(seconds);
  const photos = await photosGrow(quick);
  return [...points, ...estimate, ...depths, ...rests, ...rounds, ...photos, ...(await jobsGrow(seconds))];
}

/** The list of jobs, each with the demo's ledger: one entry is written into one of them before each, and once as a server begins. */
async function jobsGrow(seconds) {
  const demo = jobFile(JSON.parse(readFileSync(new URL('../demo/saddle.job.json', import.meta.url), 'utf8')));
  const folder = mkdtempSync(join(tmpdir(), 'waywright-bench-'));
  const stores = new Map();
  const sizes = [10, 100, 1000];
  try {
    for (const many of sizes) {
      const store = await openSqlite(join(folder, `${many}.db`));
      stores.set(many, store);
      for (let k = 0; k < many; k++) await store.make(`job-${k}`, demo.entries);
    }
    const first = await grows(
      'list of jobs, first time',
      'jobs',
      sizes,
      // A store that nobody asked before: nothing is known of its ledgers.
      (many) => () => listJobs({ ...stores.get(many) }),
      { seconds },
    );
    let written = 0;
    const later = await grows(
      'list of jobs, one of them gone on',
      'jobs',
      sizes,
      (many) => async () => {
        const store = stores.get(many);
        written += 1;
        const note = { kind: 'note', text: 'oil', id: `note-${written}`, at: '2031-11-25T14:32:00Z' };
        await store.append(`job-${written % many}`, note);
        return listJobs(store);
      },
      { seconds },
    );
    return [...first, ...later];
  } finally {
    for (const store of stores.values()) await store.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
