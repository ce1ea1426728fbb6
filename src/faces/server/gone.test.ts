import fastify from 'fastify';
import { expect, it } from 'vitest';
import type { Compute } from '../../shop/compute.ts';
import { Gone } from './gone.ts';
import { answerFailures } from './refusals.ts';
import { sumRoutes } from './sums.ts';

/** Any line that the contract takes. */
const line = { kind: 'angles', step_mm: 200, angles_urad: [4, -2, 7] };

it('a sum whose asker goes away is told so; one that is answered is not', async () => {
  const stops: AbortSignal[] = [];
  let hasBegun = () => {};
  const begun = new Promise<void>((go) => {
    hasBegun = go;
  });
  // The first never ends by itself; the others are answered at once.
  const compute = ((_kind: string, _ask: unknown, stop: AbortSignal) => {
    stops.push(stop);
    hasBegun();
    return stops.length > 1
      ? Promise.resolve({ ok: true })
      : new Promise((_, failed) => {
          stop.addEventListener('abort', () => failed(stop.reason));
        });
  }) as unknown as Compute;
  const app = fastify();
  answerFailures(app);
  await app.register(sumRoutes(compute));
  const address = await app.listen({ port: 0 });
  const ask = (signal?: AbortSignal) =>
    fetch(`${address}/api/line`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(line),
      ...(signal ? { signal } : {}),
    });

  const wish = new AbortController();
  const asked = ask(wish.signal).catch((failure: Error) => failure.name);
  await begun;
  const heard = new Promise((done) => stops[0]!.addEventListener('abort', done));
  wish.abort();
  expect(await asked).toBe('AbortError');
  await heard;
  expect(stops[0]!.reason).toBeInstanceOf(Gone);

  expect((await ask()).status).toBe(200);
  await app.close();
  expect(stops[1]!.aborted).toBe(false);
});
