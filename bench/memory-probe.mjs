// Loaded into a server before its own program (node --expose-gc --import): tells every so often, after a collection, what each of its
// threads holds. Lines of JSON into the file that MEMORY_PROBE names.
import { appendFileSync } from 'node:fs';
import { threadId } from 'node:worker_threads';

const every_ms = Number(process.env.MEMORY_PROBE_MS ?? 20_000);
const mb = (bytes) => Math.round(bytes / 104_857.6) / 10;

function tell() {
  globalThis.gc?.();
  const { rss, heapUsed, heapTotal, external, arrayBuffers } = process.memoryUsage();
  const line = {
    s: Math.round(performance.now() / 1_000),
    thread: threadId,
    rss: mb(rss),
    heapUsed: mb(heapUsed),
    heapTotal: mb(heapTotal),
    external: mb(external),
    arrayBuffers: mb(arrayBuffers),
  };
  appendFileSync(process.env.MEMORY_PROBE, `${JSON.stringify(line)}\n`);
}

// At once too: a short run ends before the first interval.
tell();
setInterval(tell, every_ms).unref();
