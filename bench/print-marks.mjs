// How near readings of prints come to the truth: npm run build, then node bench/print-marks.mjs FOLDER
// FOLDER holds pictures and beside each a JSON file with `difficulty`, `input` (image, size, corners, exclusions: what the
// reader may see) and `truth` (spots, squares, bearing: for the scorer alone). Counts of whole squares are compared; spots are
// matched one to one within 2 mm, nearest first.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';

const dist = new URL('../dist/core/print/read-print.js', import.meta.url);
const [folder] = process.argv.slice(2);
if (folder === undefined || !existsSync(folder)) {
  console.error(
    'print-marks: give the folder of pictures with their truth: node bench/print-marks.mjs FOLDER',
  );
  process.exit(1);
}
if (!existsSync(dist)) {
  console.error('print-marks: dist/ is missing; run npm run build first');
  process.exit(1);
}
const { readPrint } = await import(dist.href);

const reach_mm = 2;
const point = ([x, y]) => ({ x, y });

async function readingOf({ image, length_mm, width_mm, corners_px, exclusions, cell_mm }) {
  const { data, info } = await sharp(join(folder, image))
    .autoOrient()
    .toColourspace('srgb')
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return readPrint({
    picture: { width_px: info.width, height_px: info.height, rgb: data },
    corners: corners_px.map(point),
    size: { length_mm, width_mm },
    exclusions: exclusions.map((one) => (one.points ? { ...one, points: one.points.map(point) } : one)),
    cell_mm,
  });
}

/** Pairs within reach, nearest first, each spot once. */
function matches(read, there) {
  const pairs = read.flatMap((a, i) =>
    there.flatMap((b, j) => {
      const far = Math.hypot(a.x_mm - b.x, a.y_mm - b.y);
      return far <= reach_mm ? [{ i, j, far }] : [];
    }),
  );
  pairs.sort((a, b) => a.far - b.far);
  const takenI = new Set();
  const takenJ = new Set();
  for (const { i, j } of pairs)
    if (!takenI.has(i) && !takenJ.has(j)) {
      takenI.add(i);
      takenJ.add(j);
    }
  return takenI.size;
}

function marks(reading, truth) {
  const whole = truth.cells.filter((cell) => !cell.partial);
  const mae = (key) =>
    whole.reduce((sum, cell) => {
      const read = reading.cells.find(({ col, row }) => col === cell.col && row === cell.row);
      return sum + Math.abs((read?.[key] ?? 0) - cell[key]);
    }, 0) / whole.length;
  const many = reading.spots.length + truth.spots.length;
  return {
    count: 100 * (reading.spots.length / truth.spot_count - 1),
    bearing: reading.bearing_pct - truth.bearing_pct,
    square: mae('count'),
    squareBearing: mae('bearing_pct'),
    f1: many ? (2 * matches(reading.spots, truth.spots)) / many : 1,
  };
}

const names = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .toSorted();
const rows = [];
for (const name of names) {
  const { difficulty, input, truth } = JSON.parse(readFileSync(join(folder, name), 'utf8'));
  const reading = await readingOf(input);
  rows.push({
    name: name.replace('.json', ''),
    difficulty,
    ...marks(reading, truth),
    warnings: reading.warnings.map(({ code }) => code).join(', ') || 'none',
  });
}

const signed = (value, digits) => `${value >= 0 ? '+' : '−'}${Math.abs(value).toFixed(digits)}`;
const line = (cells) => `| ${cells.join(' | ')} |`;
console.log(
  line([
    'picture',
    'count %',
    'bearing, points',
    'count MAE a square',
    'bearing MAE, points',
    'F1',
    'warnings',
  ]),
);
console.log(line(Array(7).fill('---')));
for (const row of rows)
  console.log(
    line([
      row.name,
      signed(row.count, 1),
      signed(row.bearing, 2),
      row.square.toFixed(2),
      row.squareBearing.toFixed(2),
      row.f1.toFixed(3),
      row.warnings,
    ]),
  );
console.log();
console.log(line(['group', 'pictures', 'abs count error %', 'abs bearing error, points', 'count MAE', 'F1']));
console.log(line(Array(6).fill('---')));
const groups = [...new Set(rows.map(({ difficulty }) => difficulty)), 'all'];
for (const group of groups) {
  const some = rows.filter(({ difficulty }) => group === 'all' || difficulty === group);
  const mean = (of) => some.reduce((sum, row) => sum + of(row), 0) / some.length;
  console.log(
    line([
      group,
      some.length,
      mean(({ count }) => Math.abs(count)).toFixed(1),
      mean(({ bearing }) => Math.abs(bearing)).toFixed(2),
      mean(({ square }) => square).toFixed(2),
      mean(({ f1 }) => f1).toFixed(3),
    ]),
  );
}
