import { existsSync, readFileSync } from 'node:fs';
import { type AddressInfo, createServer } from 'node:net';
import { dirname, join } from 'node:path';
import { zipArchives } from '../../adapters/archive/archives.ts';
import { deviceFile } from '../../adapters/devices/device-file.ts';
import { packageRoot, packageVersion } from '../../adapters/file/package-root.ts';
import { readTemplates } from '../../adapters/file/templates.ts';
import { readTestLists } from '../../adapters/file/test-lists.ts';
import { readWholeMachines } from '../../adapters/file/whole-machines.ts';
import { demoJobs, workshopFile } from '../../adapters/file/workshop.ts';
import { photoFolder } from '../../adapters/photo/folder.ts';
import { openSqlite } from '../../adapters/store/sqlite.ts';
import { importJob } from '../../shop/keep-job.ts';
import { Fault } from '../../shop/store.ts';
import { buildApp } from './app.ts';
import { pressOnThread } from './paper-thread.ts';
import { photosOnThread } from './photo-thread.ts';
import { askedOf } from './share/asked.ts';
import { openInvitations } from './share/invitations.ts';
import { networkAddresses } from './share/own-names.ts';
import type { ShareParts } from './share/routes.ts';
import { shareText } from './share/text.ts';
import { computeOnThread } from './thread.ts';

const loopback = '127.0.0.1';
/** Every network of this machine: only when sharing was asked for. */
const everywhere = '0.0.0.0';
const usualPort = 7117;
/** How many ports after the usual one are tried when it is taken. */
const portsTried = 20;

const isFree = (port: number, host: string): Promise<boolean> =>
  new Promise((answer) => {
    const probe = createServer();
    probe.once('error', () => answer(false));
    probe.listen(port, host, () => probe.close(() => answer(true)));
  });

/** The port that PORT names, or the usual one, or the next that is free. */
async function choosePort(host: string): Promise<number> {
  const named = process.env.PORT;
  if (named !== undefined) {
    const port = Number(named);
    if (!Number.isInteger(port) || port < 0 || port > 65_535)
      throw new RangeError(`PORT: ${JSON.stringify(named)}; expected a whole number from 0 to 65535`);
    return port;
  }
  for (let port = usualPort; port < usualPort + portsTried; port++) if (await isFree(port, host)) return port;
  return 0;
}

async function main(): Promise<void> {
  const asked = askedOf(process.argv.slice(2));
  const host = asked.share ? everywhere : loopback;
  const port = await choosePort(host);
  const file = workshopFile();
  const store = await openSqlite(file);
  const demos = demoJobs();
  const empty = (await store.jobs()).length === 0;
  if (empty) for (const demo of demos) await importJob(store, demo);

  const thread = computeOnThread(new URL('./worker/main.js', import.meta.url));
  const photos = join(dirname(file), 'photos');
  const photoThread = photosOnThread(new URL('./photo-worker/main.js', import.meta.url), photos);
  const paper = pressOnThread(new URL('./paper-worker/main.js', import.meta.url), photos);
  const templates = readTemplates();
  const page = join(packageRoot(), 'dist', 'web');
  const share: ShareParts = {
    devices: deviceFile(join(dirname(file), 'devices.jsonl')),
    invitations: openInvitations(),
    scheme: asked.tls ? 'https' : 'http',
    addresses: () => (asked.share ? networkAddresses() : []),
  };
  const app = await buildApp({
    store,
    templates,
    machines: readWholeMachines(undefined, templates),
    compute: thread.compute,
    photos: { store: photoFolder(photos), ask: photoThread.ask },
    archives: zipArchives(photos),
    charts: { lists: readTestLists(), press: paper.press },
    share,
    ...(asked.tls ? { tls: { cert: readFileSync(asked.tls.cert), key: readFileSync(asked.tls.key) } } : {}),
    version: packageVersion(),
    ...(existsSync(join(page, 'index.html')) ? { page } : {}),
  });
  await app.listen({ port, host });
  const listening = (app.server.address() as AddressInfo).port;
  const address = `${share.scheme}://${loopback}:${listening}`;
  const [demo] = demos;
  const shown =
    demo && (await store.entries(demo.id)) ? `${address}/job/${encodeURIComponent(demo.id)}` : address;
  console.log(
    `Waywright is at ${address}\nOpen ${shown}\nThe workshop is kept in ${file}. Stop with Ctrl+C.`,
  );
  if (asked.share) console.log(shareText(share, listening));

  let stopping = false;
  const stop = async (): Promise<void> => {
    if (stopping) return;
    stopping = true;
    await app.close();
    await thread.close();
    await photoThread.close();
    await paper.close();
    await store.close();
  };
  process.on('SIGINT', () => void stop());
  process.on('SIGTERM', () => void stop());
}

main().catch((failure: unknown) => {
  const known =
    failure instanceof Fault ||
    failure instanceof RangeError ||
    (failure as { code?: string }).code !== undefined;
  console.error(known ? `Waywright cannot start: ${(failure as Error).message}` : failure);
  process.exitCode = 1;
});
