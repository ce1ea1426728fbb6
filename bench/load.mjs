// A shop's day at once: 50 devices with live updates, 200 entries a second with every one forced to the disk, then ten phones that
// send photos of 8 MB together. Starts the built server, shared, on a workshop of its own.
// With DATABASE_URL (an empty PostgreSQL database) the entries go there. What the server and this script itself took of the processors
// is told too, for on a busy machine the times are mostly of waiting for a turn.
// Usage: node bench/load.mjs [seconds] [entries a second]
import { spawn } from 'node:child_process';
import { createHash, randomBytes, randomUUID } from 'node:crypto';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import http from 'node:http';
import { loadavg, networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as later } from 'node:timers/promises';
import pg from 'pg';
import sharp from 'sharp';

const seconds = Number(process.argv[2] ?? 60);
const perSecond = Number(process.argv[3] ?? 200);
const devices = 50;
const jobs = 10;
const photoPhones = 10;
const photo_bytes = 8_000_000;

const lan = Object.values(networkInterfaces())
  .flat()
  .find((card) => card && !card.internal && card.family === 'IPv4')?.address;
if (!lan) throw new Error('load: this machine is on no network; the workshop cannot be shared');

const folder = mkdtempSync(join(process.env.LOAD_FOLDER ?? tmpdir(), 'waywright-load-'));
const keys = Array.from({ length: devices }, () => randomBytes(32).toString('base64url'));
const at = new Date().toISOString();
const letIn = keys.map((key, k) => ({
  kind: 'let in',
  id: randomBytes(8).toString('hex'),
  name: `device ${k}`,
  role: 'writer',
  key_sha256: createHash('sha256').update(key).digest('hex'),
  at,
}));
writeFileSync(join(folder, 'devices.jsonl'), letIn.map((one) => `${JSON.stringify(one)}\n`).join(''));

const server = spawn(
  process.execPath,
  [...(process.env.LOAD_NODE?.split(' ') ?? []), 'dist/faces/server/main.js', '--share'],
  {
    env: { ...process.env, WAYWRIGHT_DATA: folder, PORT: '0' },
    stdio: ['ignore', 'pipe', 'inherit'],
  },
);
// Whatever ends this script ends the server it started.
process.on('exit', () => server.kill('SIGKILL'));
const port = await new Promise((found, failed) => {
  let said = '';
  server.stdout.on('data', (chunk) => {
    said += chunk;
    const its = /Waywright is at http:\/\/127\.0\.0\.1:(\d+)/.exec(said);
    if (its) found(Number(its[1]));
  });
  server.once('exit', (code) => failed(new Error(`load: the server ended with ${code}`)));
});

if (process.env.DATABASE_URL) {
  const client = new pg.Client({ connectionString: process.env.DATABASE_URL });
  await client.connect();
  for (const [k, one] of letIn.entries())
    await client.query('insert into waywright.device_line (n, kind, device, line) values ($1, $2, $3, $4)', [
      // Behind what the server itself wrote at its start.
      k + 1_000,
      one.kind,
      one.id,
      JSON.stringify(one),
    ]);
  await client.end();
}

const agent = new http.Agent({ keepAlive: true, maxSockets: 200 });
const host = `${lan}:${port}`;

/** One request; its status, and how long it took since `since`, ms. */
function send(key, method, path, body, type = 'application/json', since = performance.now()) {
  return new Promise((done, failed) => {
    const headers = {
      host,
      origin: `http://${host}`,
      cookie: `waywright-key=${key}`,
      ...(body === undefined ? {} : { 'content-type': type, 'content-length': Buffer.byteLength(body) }),
    };
    const request = http.request({ host: lan, port, method, path, headers, agent }, (response) => {
      const parts = [];
      response.on('data', (part) => parts.push(part));
      response.on('end', () =>
        done({
          status: response.statusCode,
          took: performance.now() - since,
          text: Buffer.concat(parts).toString(),
        }),
      );
    });
    request.on('error', failed);
    request.end(body);
  });
}

for (let k = 0; k < jobs; k++) {
  const body = JSON.stringify({
    id: `job-${k}`,
    at,
    template: 'lathe-saddle',
    title: `Job ${k}`,
    dimensions: {},
  });
  const { status, text } = await send(keys[0], 'POST', '/api/jobs', body);
  if (status !== 201) throw new Error(`load: job not made: ${status} ${text}`);
}

const sentAt = new Map();
const lag = [];
let heard = 0;
/** Live updates of one device: counts entries, and how long after their sending they came. */
function listen(key, job) {
  return new Promise((open, failed) => {
    const request = http.get(
      {
        host: lan,
        port,
        path: `/api/jobs/${job}/events?after=1`,
        headers: { host, cookie: `waywright-key=${key}` },
      },
      (response) => {
        if (response.statusCode !== 200)
          return failed(new Error(`load: events answered ${response.statusCode}`));
        open(request);
        let left = '';
        response.on('data', (chunk) => {
          const events = (left + chunk).split('\n\n');
          left = events.pop();
          for (const event of events) {
            const data = /^data: (.*)$/m.exec(event)?.[1];
            if (data === undefined) continue;
            heard += 1;
            const since = sentAt.get(/"id":"([^"]+)"/.exec(data)?.[1]);
            if (since !== undefined) lag.push(performance.now() - since);
          }
        });
        response.on('error', () => undefined);
      },
    );
    request.on('error', (failure) => failed(failure));
  });
}
const streams = await Promise.all(keys.map((key, k) => listen(key, `job-${k % jobs}`)));

const quantile = (all, share) =>
  [...all].sort((a, b) => a - b)[Math.min(all.length - 1, Math.floor(all.length * share))];
const line = (name, all) =>
  console.log(
    `${name}: ${all.length} times, p50 ${quantile(all, 0.5).toFixed(1)} ms, p95 ${quantile(all, 0.95).toFixed(1)} ms, p99 ${quantile(all, 0.99).toFixed(1)} ms, longest ${Math.max(...all).toFixed(0)} ms`,
  );

/** Processor time a process has had, ms: the 14th and 15th field of /proc/PID/stat (proc(5)), in hundredths of a second. */
function cpuOf_ms(pid) {
  const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  return (Number(fields[11]) + Number(fields[12])) * 10;
}
/** What the server and this script took of the processors while something was done. */
async function counted(work, times) {
  const lag = monitorEventLoopDelay({ resolution: 5 });
  lag.enable();
  const before = { server: cpuOf_ms(server.pid), here: cpuOf_ms(process.pid), at: performance.now() };
  const answer = await work();
  const took_ms = performance.now() - before.at;
  const server_ms = cpuOf_ms(server.pid) - before.server;
  const share = (ms) => `${((100 * ms) / took_ms).toFixed(0)} %`;
  console.log(
    `processor: server ${share(server_ms)} of one (${(server_ms / times).toFixed(2)} ms an entry), this script ${share(cpuOf_ms(process.pid) - before.here)}, itself held up p99 ${(lag.percentile(99) / 1e6).toFixed(0)} ms, longest ${(lag.max / 1e6).toFixed(0)} ms; load average ${loadavg()[0].toFixed(1)}`,
  );
  return answer;
}

let bad = 0;
/** Entries at a steady rate whatever the server does; each is timed from when it was due. */
async function entriesFor(duration_s, rate) {
  const took = [];
  const under = [];
  const begin = performance.now();
  const count = Math.round(duration_s * rate);
  for (let k = 0; k < count; k++) {
    const due = begin + (k * 1_000) / rate;
    const wait = due - performance.now();
    if (wait > 1) await later(wait);
    const id = randomUUID();
    const reading = { typed: String(k % 40), value: k % 40 };
    const entry = {
      kind: 'level read',
      round: 1,
      setup: 'level_across',
      repeat: k % 100,
      record: {},
      reading,
      id,
      at,
    };
    sentAt.set(id, due);
    const device = k % devices;
    under.push(
      send(
        keys[device],
        'POST',
        `/api/jobs/job-${device % jobs}/entries`,
        JSON.stringify(entry),
        undefined,
        due,
      ).then(({ status, took: ms, text }) => {
        took.push(ms);
        if (status !== 201 && bad++ < 3) console.log(`not kept: ${status} ${text.slice(0, 300)}`);
      }),
    );
  }
  await Promise.all(under);
  const over_s = (performance.now() - begin) / 1_000;
  return { took, rate: count / over_s };
}

console.log(
  `load average before: ${loadavg()
    .map((one) => one.toFixed(1))
    .join(' ')}`,
);
// The first seconds of a server are not a day's.
await entriesFor(5, 50);
sentAt.clear();
lag.length = 0;
heard = 0;
const entries = await counted(() => entriesFor(seconds, perSecond), seconds * perSecond);
await later(1_500);
console.log(
  `${process.env.DATABASE_URL ? 'PostgreSQL' : 'SQLite'}: ${devices} devices with live updates, ${entries.rate.toFixed(0)} entries a second, each on the disk before it is answered`,
);
line('entry kept', entries.took);
line('seen by the others', lag);
console.log(`entries not kept: ${bad}; events heard ${heard} of ${entries.took.length * (devices / jobs)}`);

/** Noise does not compress: a JPEG of a little more than 8 MB, each another. */
async function bigPhoto() {
  for (let side = 2_000; ; side += 200) {
    const raw = { width: side, height: side, channels: 3 };
    const jpeg = await sharp(randomBytes(side * side * 3), { raw })
      .jpeg({ quality: 95 })
      .toBuffer();
    if (jpeg.length >= photo_bytes) return jpeg;
  }
}
/** As the page does: a shop that has no time just now is asked again; the time counts from the first try. */
async function sendPhoto(key, jpeg) {
  const since = performance.now();
  for (let tries = 1; ; tries++) {
    const answer = await send(key, 'POST', '/api/photos', jpeg, 'image/jpeg', since);
    if (answer.status !== 503 || tries === 10) return answer;
    await later(3_000);
  }
}
const photos = [];
for (let k = 0; k < photoPhones; k++) photos.push(await bigPhoto());
sentAt.clear();
const [beside, sent] = await counted(
  () =>
    Promise.all([
      entriesFor(15, 50),
      later(2_000).then(() => Promise.all(photos.map((jpeg, k) => sendPhoto(keys[k], jpeg)))),
    ]),
  15 * 50,
);
const size = photos.reduce((sum, jpeg) => sum + jpeg.length, 0) / photos.length / 1e6;
console.log(
  `${photoPhones} phones send a photo of ${size.toFixed(1)} MB at once, 50 entries a second beside them`,
);
line(
  'photo kept',
  sent.map((one) => one.took),
);
line('entry kept meanwhile', beside.took);
console.log(`photos not kept: ${sent.filter((one) => one.status !== 201).length}; entries not kept: ${bad}`);
console.log(
  `load average after: ${loadavg()
    .map((one) => one.toFixed(1))
    .join(' ')}`,
);

for (const stream of streams) stream.destroy();
agent.destroy();
server.kill('SIGTERM');
await new Promise((done) => server.once('exit', done));
process.exitCode = bad > 0 ? 1 : 0;
