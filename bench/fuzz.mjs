// Spoiled requests over every route and the file formats: none may end the server, none may be answered with 5xx, and memory must not
// grow. Starts the built server, shared, on a workshop of its own. Usage: node bench/fuzz.mjs [requests] [seed]
import { spawn } from 'node:child_process';
import { createHash, randomBytes } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import http from 'node:http';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';

const requests = Number(process.argv[2] ?? 100_000);
const seed = Number(process.argv[3] ?? 1);
const atOnce = 8;
const devices = 60;
const patience_ms = 60_000;

/** Numbers from 0 to 1, the same for the same seed (mulberry32). */
let state = seed >>> 0;
function random() {
  state = (state + 0x6d2b79f5) >>> 0;
  let t = state;
  t = Math.imul(t ^ (t >>> 15), t | 1);
  t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
  return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
}
const upTo = (n) => Math.floor(random() * n);
const pick = (list) => list[upTo(list.length)];

const source = 'src/faces/server';
/** Every route as the sources declare it, so that one that is made tomorrow is met too. */
const routes = readdirSync(source, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))
  .flatMap((name) => [
    ...readFileSync(join(source, name), 'utf8').matchAll(
      /app\.(get|post)(?:<[^(]+>)?\(\s*['`](\/[^'`]*)['`]/g,
    ),
  ])
  .map(([, method, path]) => ({ method: method.toUpperCase(), path }))
  // A device that leaves is out, and all that follows would be refused: left to the tests of sharing.
  .filter(({ path }) => path !== '/*' && path !== '/api/share/leave' && !path.includes('${'));
routes.push(
  ...'steer rest site parts line plate kit/report sums order heights axis chart gib'
    .split(' ')
    .map((name) => ({ method: 'POST', path: `/api/${name}` })),
);

const read = (file) => JSON.parse(readFileSync(file, 'utf8'));
const cases = readdirSync('checks/data/cases')
  .filter((name) => name.endsWith('.json') && !name.startsWith('print'))
  .map((name) => read(join('checks/data/cases', name)))
  .map((one) => one.input ?? one)
  .filter((one) => JSON.stringify(one).length < 40_000);
const jobs = ['saddle', 'lathe', 'mill'].map((name) => read(`demo/${name}.job.json`));
const entries = jobs.flatMap((job) => job.entries).filter((entry) => JSON.stringify(entry).length < 20_000);
const at = '2031-11-25T14:32:00Z';

const odd = [
  null,
  true,
  false,
  0,
  -1,
  1.5,
  1e308,
  -1e308,
  5e-324,
  2 ** 53,
  '',
  ' ',
  'x',
  '0',
  'NaN',
  '\u0000',
  '\ud800',
  '../../etc/passwd',
  '<script>alert(1)</script>',
  "' or 1=1 --",
  '%s%n%x',
  'toString',
  'constructor',
  'hasOwnProperty',
  [],
  {},
  [[]],
  [null],
  { length: 1e9 },
];
const oddValue = () => {
  const what = upTo(40);
  if (what === 0) return 'x'.repeat(100_000);
  if (what === 1) return Array.from({ length: 5_000 }, () => 1);
  if (what === 2) return JSON.parse(`${'['.repeat(400)}${']'.repeat(400)}`);
  return pick(odd);
};

/** A copy of a tree, spoiled in a few places: values swapped, taken away, doubled, moved, or keys added. */
function spoiled(tree) {
  const copy = structuredClone(tree);
  const nodes = [];
  const walk = (node) => {
    if (node === null || typeof node !== 'object') return;
    nodes.push(node);
    for (const child of Object.values(node)) walk(child);
  };
  walk(copy);
  if (nodes.length === 0) return oddValue();
  for (let k = 0; k <= upTo(3); k++) {
    const node = pick(nodes);
    const isList = Array.isArray(node);
    const keys = Object.keys(node);
    const key = keys.length === 0 ? 'x' : pick(keys);
    const what = upTo(7);
    if (what === 0) delete node[key];
    else if (what === 1 && !isList)
      node[pick(['x', 'id', 'seq', 'kind', 'constructor', 'size'])] = oddValue();
    else if (what === 2 && isList) node.push(...structuredClone(node).slice(0, 50));
    else if (what === 3 && typeof node[key] === 'number') node[key] *= pick([-1, 0, 1e-9, 1e9, 1e300]);
    else if (what === 4) node[key] = structuredClone(pick(nodes));
    else node[key] = oddValue();
    // A node that holds itself cannot be written.
    try {
      if (JSON.stringify(copy).length > 3_000_000) return tree;
    } catch {
      return tree;
    }
  }
  return copy;
}

/** A text with bytes changed, cut off or said twice. */
function garbled(text) {
  const from = upTo(text.length);
  const what = upTo(5);
  if (what === 0) return text.slice(0, from);
  if (what === 1) return text.slice(0, from) + String.fromCharCode(upTo(0x3000)) + text.slice(from + 1);
  if (what === 2) return text + text;
  if (what === 3) return text.slice(from);
  return text.replace(/"/g, pick(["'", '', '\\"']));
}

const bodyFor = (path) => {
  if (path.endsWith('/entries')) {
    const { seq, ...entry } = upTo(2) ? { kind: 'note', text: String(pick(odd)) || 'x', at } : pick(entries);
    return { ...entry, id: `fuzz-${upTo(1e9)}`, ...(upTo(8) ? {} : { seq }) };
  }
  if (path === '/api/import') return pick(jobs);
  if (path === '/api/jobs')
    return {
      id: `made-${upTo(20)}`,
      at,
      template: pick(['lathe-saddle', 'none']),
      title: 'Fuzz',
      dimensions: { length: pick([300, -1, '12 in']) },
    };
  if (path === '/api/join') return { code: '0000-0000', name: 'x' };
  if (path.includes('invitations')) return { role: 'writer' };
  if (path.includes('practice')) return { round: upTo(6), repeat: upTo(4) };
  if (path.includes('steps')) return { id: `bench-${upTo(20)}`, at };
  return pick(cases);
};

const jpeg = readFileSync('docs/pictures/bench-phone.png');
const oddBytes = () => {
  const bytes = Buffer.from(jpeg.subarray(0, 2_000 + upTo(20_000)));
  for (let k = 0; k < 20; k++) bytes[upTo(bytes.length)] = upTo(256);
  return bytes;
};

const ids = [
  'demo-saddle',
  'demo-lathe',
  'demo-mill',
  'none',
  '..',
  '%2e%2e',
  '%00',
  "'",
  'x'.repeat(300),
  'toString',
];
function request() {
  const route = pick(routes);
  let path = route.path
    .replace(/:hash/, () => pick(['0'.repeat(64), 'x', '..%2f..%2fworkshop.db', 'ab'.repeat(32)]))
    .replace(/:step/, () => pick(['bed', 'none', '%2f']))
    .replace(/:\w+/g, () => pick(ids));
  if (upTo(20) === 0)
    path = pick(['/%', '//', '/api', '/api/%ff', '/../x', `/${'a/'.repeat(500)}`, '/api/jobs/%00/answer']);
  if (upTo(8) === 0)
    path += `?${pick(['as=x', 'as=..', 'after=-1', 'partial=no', 'x=%', '__proto__[x]=1', 'as=a&as=b'])}`;
  const method =
    upTo(15) === 0 ? pick(['GET', 'POST', 'PUT', 'DELETE', 'PATCH', 'HEAD', 'OPTIONS']) : route.method;
  const headers = {};
  if (upTo(60) === 0) headers.cookie = pick(['waywright-key=x', '=;=;', 'x'.repeat(3_000)]);
  if (upTo(60) === 0) headers['last-event-id'] = pick(['-1', 'x', '1e9', '9'.repeat(40)]);
  if (upTo(60) === 0) headers.accept = pick(['', '*/*;q=x', 'text/html']);
  if (method === 'GET' || method === 'HEAD') return { method, path, headers };
  if (route.path.includes('photos') || route.path.includes('archives') || upTo(200) === 0) {
    headers['content-type'] = pick(['image/jpeg', 'image/png', 'application/zip', 'application/json']);
    return { method, path, headers, body: oddBytes() };
  }
  headers['content-type'] =
    upTo(40) === 0
      ? pick(['text/plain', 'application/json; charset=latin1', 'x', 'application/jsonx'])
      : 'application/json';
  const sound = bodyFor(route.path);
  const text = JSON.stringify(upTo(12) === 0 ? sound : spoiled(sound)) ?? '';
  return { method, path, headers, body: upTo(6) === 0 ? garbled(text) : text };
}

const folder = mkdtempSync(join(tmpdir(), 'waywright-fuzz-'));
const lan = Object.values(networkInterfaces())
  .flat()
  .find((card) => card && !card.internal && card.family === 'IPv4')?.address;
const keys = Array.from({ length: devices }, () => randomBytes(32).toString('base64url'));
writeFileSync(
  join(folder, 'devices.jsonl'),
  keys
    .map((key) => {
      const key_sha256 = createHash('sha256').update(key).digest('hex');
      return `${JSON.stringify({ kind: 'let in', id: key_sha256.slice(0, 16), name: 'fuzz', role: 'writer', key_sha256, at })}\n`;
    })
    .join(''),
);
// What its threads hold after a collection, so that memory that is only not yet given back is not taken for a leak.
const held = join(folder, 'held.jsonl');
const probe = ['--expose-gc', '--import', './bench/memory-probe.mjs'];
const server = spawn(process.execPath, [...probe, 'dist/faces/server/main.js', '--share'], {
  env: { ...process.env, WAYWRIGHT_DATA: folder, PORT: '0', MEMORY_PROBE: held },
  stdio: ['ignore', 'pipe', 'pipe'],
});
let ended = false;
let said = '';
server.stderr.on('data', (chunk) => {
  said = (said + chunk).slice(-4_000);
});
// Whatever ends this script ends the server it started.
process.on('exit', () => server.kill('SIGKILL'));
const port = await new Promise((found, failed) => {
  let told = '';
  server.stdout.on('data', (chunk) => {
    told += chunk;
    const its = /Waywright is at http:\/\/127\.0\.0\.1:(\d+)/.exec(told);
    if (its) found(Number(its[1]));
  });
  server.once('exit', (code) => {
    ended = true;
    failed(new Error(`fuzz: the server ended with ${code}: ${said}`));
  });
});

const address = lan ?? '127.0.0.1';
const agent = new http.Agent({ keepAlive: true, maxSockets: atOnce });
const statuses = new Map();
const failures = [];
let unanswered = 0;

const send = ({ method, path, headers, body }, key) =>
  new Promise((done) => {
    const host = `${address}:${port}`;
    const all = { host, origin: `http://${host}`, cookie: `waywright-key=${key}`, ...headers };
    let asked;
    try {
      asked = http.request({ host: address, port, method, path, headers: all, agent, timeout: patience_ms });
    } catch {
      // The client's own refusal of an address it cannot write.
      return done('client');
    }
    asked.on('response', (response) => {
      const parts = [];
      if (String(response.headers['content-type']).startsWith('text/event-stream')) {
        asked.destroy();
        return done(response.statusCode);
      }
      response.on('data', (part) => parts.length < 4 && parts.push(part));
      response.on('end', () => {
        if (response.statusCode >= 500)
          failures.push(
            `${response.statusCode} ${method} ${path.slice(0, 120)} ${Buffer.concat(parts).toString().slice(0, 200)} <- ${String(body).slice(0, 300)}`,
          );
        done(response.statusCode);
      });
      response.on('error', () => done('broken'));
    });
    asked.on('timeout', () => asked.destroy(new Error('timeout')));
    // A body that is refused unread closes the line; that the server still stands is asked below.
    asked.on('error', (failure) => {
      if (failure.message === 'timeout') {
        unanswered += 1;
        failures.push(`unanswered ${method} ${path.slice(0, 120)} <- ${String(body).slice(0, 20_000)}`);
      }
      done(failure.message === 'timeout' ? 'unanswered' : 'closed');
    });
    asked.end(body);
  });

const memory_mb = () =>
  Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${server.pid}/status`, 'utf8'))?.[1]) / 1024;
const memory = [];
let next = 0;
const began = performance.now();
const step = Math.max(1, Math.floor(requests / 20));
async function worker() {
  while (next < requests && !ended) {
    const k = next++;
    if (k % step === 0 && process.platform === 'linux') {
      memory.push(memory_mb());
      if (process.stdout.isTTY)
        console.log(`${k}: ${memory.at(-1).toFixed(0)} MB, ${failures.length} failures`);
    }
    const status = await send(request(), keys[k % devices]);
    statuses.set(status, (statuses.get(status) ?? 0) + 1);
  }
}
await Promise.all(Array.from({ length: atOnce }, worker));
const alive = !ended && (await fetch(`http://127.0.0.1:${port}/api/health`)).ok;

console.log(
  `${next} requests over ${routes.length} routes in ${((performance.now() - began) / 1_000).toFixed(0)} s, seed ${seed}`,
);
console.log(
  [...statuses]
    .sort((a, b) => b[1] - a[1])
    .map(([status, n]) => `${status}: ${n}`)
    .join(', '),
);
console.log(
  `5xx: ${failures.length - unanswered}; unanswered: ${unanswered}; server ${alive ? 'stands' : `ENDED: ${said}`}`,
);
if (memory.length > 0)
  console.log(`memory, MB, along the way: ${memory.map((mb) => mb.toFixed(0)).join(' ')}`);
const lines = readFileSync(held, 'utf8')
  .trim()
  .split('\n')
  .map((line) => JSON.parse(line));
for (const thread of new Set(lines.map((line) => line.thread))) {
  const own = lines.filter((line) => line.thread === thread);
  const some = own.filter((_, k) => k % Math.ceil(own.length / 20) === 0);
  const inUse = some.map(({ heapUsed, external }) => (heapUsed + external).toFixed(0)).join(' ');
  console.log(`in use after a collection, MB, ${thread === 0 ? 'the server' : `thread ${thread}`}: ${inUse}`);
}
for (const failure of failures.slice(0, 12)) console.log(failure);
agent.destroy();
server.kill('SIGTERM');
process.exitCode = failures.length === 0 && unanswered === 0 && alive ? 0 : 1;
