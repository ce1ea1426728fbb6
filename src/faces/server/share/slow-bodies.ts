import type { FastifyInstance } from 'fastify';

/** How long a body may take to come, ms: an entry, a photo over a weak wireless network, a whole job with its photos. */
const patience_ms: readonly (readonly [RegExp, number])[] = [
  [/^application\/zip/, 3_600_000],
  [/^image\//, 300_000],
];
const usual_ms = 20_000;

/** Lets go of connections that send a body a little at a time. @param usual  for tests, ms */
export function endSlowBodies(app: FastifyInstance, usual = usual_ms): void {
  app.addHook('onRequest', async ({ raw, headers }) => {
    if (headers['content-length'] === undefined && headers['transfer-encoding'] === undefined) return;
    const type = headers['content-type'] ?? '';
    const longest = patience_ms.find(([kind]) => kind.test(type))?.[1] ?? usual;
    const timer = setTimeout(() => {
      if (!raw.complete) raw.destroy();
    }, longest);
    timer.unref();
    raw.once('end', () => clearTimeout(timer));
    raw.once('close', () => clearTimeout(timer));
  });
}
