import { execFile } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import sharp from 'sharp';
import { decodePhoto } from '../dist/adapters/photo/decode.js';
import { seededRandom } from '../dist/core/math/random.js';
import { applied, inverted, surfaceToPhoto } from '../dist/core/print/homography.js';
import { readPrint } from '../dist/core/print/read-print.js';
import { summary } from './clock.mjs';

sharp.concurrency(1);
sharp.cache(false);

const perMm = 10;

/** Blue on a surface, 0 to 255, at 10 elements a mm: some 20 spots of odd shape in every 25 mm square, each a few ellipses. */
function drawnFilm({ length_mm, width_mm }) {
  const width = Math.round(length_mm * perMm);
  const height = Math.round(width_mm * perMm);
  const film = new Uint8Array(width * height);
  const random = seededRandom(7);
  const many = Math.round((20 * length_mm * width_mm) / 625);
  for (let spot = 0; spot < many; spot++) {
    const x = random.even() * width;
    const y = random.even() * height;
    for (let part = 0; part < 3; part++) {
      const u = x + 8 * random.normal();
      const v = y + 8 * random.normal();
      const a = 5 + 9 * random.even();
      const b = 4 + 5 * random.even();
      for (let j = Math.max(0, Math.ceil(v - b)); j < Math.min(height, v + b); j++)
        for (let i = Math.max(0, Math.ceil(u - a)); i < Math.min(width, u + a); i++)
          if (((i - u) / a) ** 2 + ((j - v) / b) ** 2 < 1) film[j * width + i] = 255;
    }
  }
  return { film, width, height };
}

/**
 * A made-up photo of this many megapixels, four wide to three high, a little tilted, of a blued surface that fills 85 % of its length.
 * @returns {Promise<{ bytes: Buffer, corners: { x: number, y: number }[], size: object }>}
 */
async function drawnPhoto(megapixels, size) {
  const width_px = 4 * Math.round(Math.sqrt((megapixels * 1e6) / 12));
  const height_px = (3 * width_px) / 4;
  const half = 0.425 * width_px;
  const deep = Math.min(0.45 * height_px, (half * size.width_mm) / size.length_mm);
  const [x, y] = [width_px / 2, height_px / 2];
  const corners = [
    { x: x - 0.97 * half, y: y - deep },
    { x: x + 0.96 * half, y: y - 0.98 * deep },
    { x: x + half, y: y + deep },
    { x: x - 0.99 * half, y: y + 0.97 * deep },
  ];
  const back = inverted(surfaceToPhoto(corners, size));
  const { film, width, height } = drawnFilm(size);
  const rgb = new Uint8Array(3 * width_px * height_px);
  let state = 1;
  for (let v = 0, o = 0; v < height_px; v++)
    for (let u = 0; u < width_px; u++) {
      const place = applied(back, { x: u, y: v });
      const i = Math.floor(place.x * perMm);
      const j = Math.floor(place.y * perMm);
      const on = i >= 0 && j >= 0 && i < width && j < height;
      const blue = on && film[j * width + i] > 0;
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      const grain = (state >>> 24) / 16 - 8;
      const light = (on ? 150 + 25 * (u / width_px) : 60) + grain;
      rgb[o++] = blue ? 0.26 * light : light;
      rgb[o++] = blue ? 0.4 * light : light;
      rgb[o++] = blue ? 0.85 * light : 0.97 * light;
    }
  const bytes = await sharp(rgb, { raw: { width: width_px, height: height_px, channels: 3 } })
    .jpeg({ quality: 88 })
    .toBuffer();
  return { bytes, corners, size };
}

const decodeAlone = ({ bytes }) => sharp(bytes).raw().toBuffer();

async function decodeAndRead({ bytes, corners, size }) {
  const { picture } = await decodePhoto(bytes);
  return readPrint({ picture, corners, size });
}

/** Both in turn, so that what else the machine does meets both. */
async function inTurn(photo, runs) {
  const ours = [];
  const theirs = [];
  for (let k = 0; k < runs + 2; k++) {
    const start = performance.now();
    await decodeAlone(photo);
    const middle = performance.now();
    await decodeAndRead(photo);
    const end = performance.now();
    if (k < 2) continue;
    theirs.push(middle - start);
    ours.push(end - middle);
  }
  return { times: summary(ours), reference: { name: 'sharp decoding to pixels', times: summary(theirs) } };
}

/** Linux hands a parent's largest down to its child in maxRSS; what it keeps in /proc begins anew. */
function largestResident_MB() {
  const status = '/proc/self/status';
  const kept = existsSync(status) && /VmHWM:\s*(\d+) kB/.exec(readFileSync(status, 'utf8'));
  return (kept ? Number(kept[1]) : process.resourceUsage().maxRSS) / 1024;
}

/** Largest resident memory of a process of its own that decodes and reads the photo three times, MB. */
async function memoryOf({ bytes, corners, size }) {
  const folder = mkdtempSync(join(tmpdir(), 'print-bench-'));
  try {
    writeFileSync(join(folder, 'photo.jpg'), bytes);
    writeFileSync(join(folder, 'photo.json'), JSON.stringify({ corners, size }));
    const { stdout } = await promisify(execFile)(process.execPath, [fileURLToPath(import.meta.url), folder]);
    return Number(stdout);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const whole = { length_mm: 300, width_mm: 110 };

export async function printTiming(quick) {
  const runs = quick ? 3 : 11;
  const twelve = await drawnPhoto(12, whole);
  const rows = [
    {
      what: 'print, 12 MP, 300 × 110 mm, one thread',
      aim: 'at most 4 × the decode, 2 × wished',
      ...(await inTurn(twelve, runs)),
    },
  ];
  for (const length_mm of [75, 150, 300]) {
    const photo = await drawnPhoto(3, { length_mm, width_mm: 110 });
    rows.push({ what: `  3 MP, ${(length_mm * 110) / 100} cm²`, ...(await inTurn(photo, runs)) });
  }
  for (const megapixels of [6, 24])
    rows.push({
      what: `  ${megapixels} MP, 330 cm²`,
      ...(await inTurn(await drawnPhoto(megapixels, whole), runs)),
    });
  rows.push({
    what: '  12 MP, largest memory',
    aim: 'under 400 MB',
    unit: 'MB',
    times: { median: await memoryOf(twelve) },
  });
  return rows;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [, , folder] = process.argv;
  const bytes = readFileSync(join(folder, 'photo.jpg'));
  const { corners, size } = JSON.parse(readFileSync(join(folder, 'photo.json'), 'utf8'));
  for (let k = 0; k < 3; k++) await decodeAndRead({ bytes, corners, size });
  console.log(largestResident_MB());
}
