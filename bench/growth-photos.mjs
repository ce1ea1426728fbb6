import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { zipArchives } from '../dist/adapters/archive/archives.js';
import { photoFolder } from '../dist/adapters/photo/folder.js';
import { solveWithHighs } from '../dist/adapters/solver/highs.js';
import { openSqlite } from '../dist/adapters/store/sqlite.js';
import { chartOver } from '../dist/contract/chart-asked.js';
import { jobFile } from '../dist/contract/job-file.js';
import { seededRandom } from '../dist/core/math/random.js';
import { pressOnThread } from '../dist/faces/server/paper-thread.js';
import { answerJob } from '../dist/shop/answer-job.js';
import { jobWithPhotos } from '../dist/shop/archive/export-photos.js';
import { chartFrom } from '../dist/shop/chart/bench-jobs.js';
import { chartReport } from '../dist/shop/chart/chart-report.js';
import { openJob } from '../dist/shop/keep-job.js';
import { grows } from './grows.mjs';

const demo = jobFile(JSON.parse(readFileSync(new URL('../demo/saddle.job.json', import.meta.url), 'utf8')));

/** A photo of 12 megapixels, grain all over, so that nothing of it is easy to pack. */
async function grainyPhoto() {
  const { even } = seededRandom(7);
  const pixels = Buffer.from(Array.from({ length: 3 * 1000 * 750 }, () => 90 + Math.floor(120 * even())));
  return sharp(pixels, { raw: { width: 1000, height: 750, channels: 3 } })
    .resize(4000, 3000, { kernel: 'cubic' })
    .jpeg({ quality: 88 })
    .toBuffer();
}

/** The same picture as another file: a comment behind its first mark (JPEG: FF FE, its length, its bytes). */
const called = (jpeg, k) =>
  Buffer.concat([
    jpeg.subarray(0, 2),
    Buffer.from([0xff, 0xfe, 0, 4, 0x30 + (k >> 4), 0x30 + (k & 15)]),
    jpeg.subarray(2),
  ]);

/** A job of the demo's saddle on which so many prints were photographed, and nothing else done. */
async function photographed(store, photos, jpeg, many) {
  const made = demo.entries[0];
  const { pads } = made.plan.slide;
  const deeds = [made];
  for (let k = 0; k < many; k++) {
    const pad = pads[k % pads.length];
    const round = Math.floor(k / pads.length) + 1;
    if (k > 0 && k % pads.length === 0) deeds.push({ kind: 'round closed', round: round - 1 });
    const { hash } = await photos.keep({ bytes: called(jpeg, k), format: 'jpeg' });
    deeds.push({
      kind: 'print photographed',
      round,
      pad: pad.name,
      photo: hash,
      corners: [
        { x: 100, y: 100 },
        { x: 3900, y: 100 },
        { x: 3900, y: 2900 },
        { x: 100, y: 2900 },
      ],
      size: { length_mm: pad.length_mm, width_mm: pad.width_mm },
      shares: Array(pad.zones).fill(0.2),
      density_per_25mm: 14,
      bearing_pct: 20,
      confidence: 0.9,
      warnings: [],
    });
  }
  const id = `photos-${many}`;
  await store.make(
    id,
    deeds.map((deed, k) => ({ ...deed, id: `e${k + 1}`, at: made.at, seq: k + 1 })),
  );
  return id;
}

/** A job's chart on paper and its archive, with the photos on them: as the server makes them. */
export async function photosGrow(quick) {
  const sizes = quick ? [1, 10] : [1, 10, 60];
  const folder = mkdtempSync(join(tmpdir(), 'waywright-bench-'));
  const photos = photoFolder(join(folder, 'photos'));
  const script = new URL('../dist/faces/server/paper-worker/main.js', import.meta.url);
  const paper = pressOnThread(script, join(folder, 'photos'));
  const store = await openSqlite(join(folder, 'workshop.db'));
  try {
    const jpeg = await grainyPhoto();
    const few = { seconds: 0, least: quick ? 1 : 3, warm: 0 };
    const jobs = new Map();
    for (const many of sizes) jobs.set(many, await photographed(store, photos, jpeg, many));
    const charts = await grows(
      'chart on paper',
      'photos',
      sizes,
      async (many) => {
        const id = jobs.get(many);
        const from = await chartFrom(id, await openJob(store, id), {
          open: (other) => openJob(store, other),
          answer: (_id, job) => answerJob(job, solveWithHighs),
        });
        const report = chartReport(chartOver(undefined, {}, []), from, 'metric');
        return () => paper.press({ report, made: demo.entries[0].at, paper: 'a4' });
      },
      few,
    );
    const archives = await grows(
      'archive of a job',
      'photos',
      sizes,
      (many) => async () => {
        const { parts } = await jobWithPhotos(store, photos, jobs.get(many));
        let bytes = 0;
        for await (const piece of zipArchives(folder).packed(parts)) bytes += piece.length;
        return bytes;
      },
      few,
    );
    return [...charts, ...archives];
  } finally {
    await paper.close();
    await store.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
