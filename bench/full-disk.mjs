// A workshop on a disk that fills up: entries, photos, a new job, an import, a backup, an export and a newer schema meet it; nothing that
// was acknowledged may be lost, before, after a new start on the full disk, and with room again. Linux, as root.
// Usage: npm run build && node bench/full-disk.mjs FOLDER [MB]; a small disk of memory is mounted at FOLDER and taken away again
import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';

const [folder, mb = '6'] = process.argv.slice(2);
if (!folder) throw new Error('full-disk: name a folder at which a small disk may be mounted');
const system = (...words) => {
  const { status, stderr } = spawnSync(words[0], words.slice(1), { encoding: 'utf8' });
  if (status !== 0) throw new Error(`full-disk: ${words.join(' ')}: ${stderr}`);
};
mkdirSync(folder, { recursive: true });
system('mount', '-t', 'tmpfs', '-o', `size=${mb}m`, 'tmpfs', folder);

const at = '2031-11-25T14:32:00Z';
const shop = join(folder, 'shop');
const env = {
  ...process.env,
  WAYWRIGHT_DATA: shop,
  PORT: '0',
  WAYWRIGHT_BACKUP: 'off',
  WAYWRIGHT_LOG: 'silent',
};
async function serve() {
  const server = spawn(process.execPath, ['dist/faces/server/main.js'], { env });
  let said = '';
  const address = await new Promise((found, failed) => {
    const hear = (piece) => {
      said += piece;
      const its = /Waywright is at (\S+)/.exec(said);
      if (its) found(its[1]);
    };
    server.stdout.on('data', hear);
    server.stderr.on('data', hear);
    server.once('exit', () => failed(new Error(said.trim())));
  });
  const stop = () =>
    new Promise((done) => {
      server.once('exit', done);
      server.kill('SIGTERM');
    });
  return { address, stop };
}
const post = async (path, body, type = 'application/json') => {
  const answer = await fetch(server.address + path, {
    method: 'POST',
    headers: { 'content-type': type },
    body,
  });
  const { message = '' } = await answer.json();
  return `${answer.status}${message ? ` ${message.replaceAll(folder, 'FOLDER')}` : ''}`;
};
const note = (id, text) =>
  post('/api/jobs/demo-saddle/entries', JSON.stringify({ kind: 'note', text, id, at }));
const kept = new Set();
const lost = async () => {
  const { entries } = await (await fetch(`${server.address}/api/jobs/demo-saddle`)).json();
  const there = new Set(entries.map(({ id }) => id));
  return `${[...kept].filter((id) => !there.has(id)).length} lost of ${kept.size}`;
};

let server = await serve();
try {
  const words = new Set();
  for (let k = 0; words.size === 0 || k % 50 !== 0; k++) {
    const answer = await note(`n-${k}`, 'x'.repeat(4_000));
    if (answer === '201') kept.add(`n-${k}`);
    else words.add(answer);
  }
  console.log(`entries: ${kept.size} kept, then ${[...words].join('; ')}`);
  const photo = readFileSync('docs/pictures/bench-phone.png');
  console.log(`photo: ${await post('/api/photos', photo, 'image/png')}`);
  const job = { id: 'more', at, template: 'lathe-saddle', title: 'More', dimensions: {} };
  console.log(`new job: ${await post('/api/jobs', JSON.stringify(job))}`);
  console.log(`import: ${await post('/api/import?as=more', readFileSync('demo/lathe.job.json'))}`);
  console.log(`full: ${await lost()}`);
  await server.stop();
  server = await serve();
  console.log(`started again on the full disk: ${await lost()}`);
  await server.stop();
  for (const words of [['backup'], ['workshop', 'export', '--out', join(folder, 'shop.zip')]]) {
    const { status, stderr } = spawnSync(process.execPath, ['dist/faces/cli/main.js', ...words], {
      env,
      encoding: 'utf8',
    });
    console.log(`${words[0]}: ends with ${status}, ${stderr.trim().replaceAll(folder, 'FOLDER')}`);
  }
  const database = new Database(join(shop, 'workshop.db'));
  const schema = database.pragma('user_version', { simple: true });
  database.pragma(`user_version = ${schema - 1}`);
  database.close();
  const told = await serve().catch((failure) => failure);
  console.log(`newer schema: ${String(told.message).replaceAll(folder, 'FOLDER')}`);
  system('mount', '-o', 'remount,size=64m', folder);
  server = await serve();
  console.log(
    `with room again: ${await lost()}; entry ${await note('room', 'room')}, photo ${await post('/api/photos', photo, 'image/png')}`,
  );
} finally {
  await server.stop();
  system('umount', folder);
}
