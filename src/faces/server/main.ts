import { existsSync, readFileSync } from 'node:fs';
import { type AddressInfo, createServer } from 'node:net';
import { join } from 'node:path';
import { zipArchives } from '../../adapters/archive/archives.ts';
import { deviceDesk } from '../../adapters/devices/desk.ts';
import { deviceFile } from '../../adapters/devices/device-file.ts';
import { deviceTable } from '../../adapters/devices/device-table.ts';
import { packageRoot, packageVersion } from '../../adapters/file/package-root.ts';
import { readTemplates } from '../../adapters/file/templates.ts';
import { readTestLists } from '../../adapters/file/test-lists.ts';
import { readWholeMachines } from '../../adapters/file/whole-machines.ts';
import { demoJobs } from '../../adapters/file/workshop.ts';
import { backupsIn } from '../../adapters/keeping/backup-folder.ts';
import { backupSettings, fileIsWhole, wayBack } from '../../adapters/keeping/keeping.ts';
import { writingOnThread } from '../../adapters/store/sqlite-thread.ts';
import { computeOnThread } from '../../adapters/thread/compute-thread.ts';
import { type OpenWorkshop, openWorkshop } from '../../adapters/workshop/open-workshop.ts';
import { type WorkshopPlace, workshopPlace } from '../../adapters/workshop/place.ts';
import { BadInput } from '../../contract/refusal.ts';
import { importJob } from '../../shop/keep-job.ts';
import { Fault } from '../../shop/store.ts';
import { buildApp } from './app.ts';
import { backupOnThread, keepBackups } from './backups.ts';
import { pressOnThread } from './paper-thread.ts';
import { photosOnThread } from './photo-thread.ts';
import { askedHelp, askedOf, portOf } from './share/asked.ts';
import { networkAddresses } from './share/own-names.ts';
import type { ShareParts } from './share/routes.ts';
import { shareText } from './share/text.ts';

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

/** The port that was asked for, or that PORT names, or the usual one, or the next that is free. */
async function choosePort(host: string, asked: number | undefined): Promise<number> {
  if (asked !== undefined) return asked;
  const named = process.env.PORT;
  if (named !== undefined) return portOf('PORT', named);
  for (let port = usualPort; port < usualPort + portsTried; port++) if (await isFree(port, host)) return port;
  return 0;
}

/** Looks the workshop through before anything is written to it; one that is damaged is told with the way back. @throws Fault */
async function openedWhole(place: WorkshopPlace, backups: string): Promise<OpenWorkshop> {
  try {
    fileIsWhole(place);
    return await openWorkshop(place);
  } catch (failure) {
    if (!(failure instanceof Fault && failure.code === 'damaged')) throw failure;
    throw new Fault('damaged', `${failure.message}\n${await wayBack(backups)}`);
  }
}

async function main(): Promise<void> {
  const asked = askedOf(process.argv.slice(2));
  if (asked.help) {
    console.log(askedHelp);
    return;
  }
  const host = asked.share ? everywhere : loopback;
  const port = await choosePort(host, asked.port);
  const place = workshopPlace();
  const plan = backupSettings(place);
  const workshop = await openedWhole(place, plan.folder);
  const { photos } = workshop;
  const store =
    place.kind === 'SQLite'
      ? writingOnThread(workshop.store, place.at, new URL('./store-worker/main.js', import.meta.url))
      : workshop.store;
  const demos = demoJobs();
  const empty = (await store.jobs()).length === 0;
  if (empty) for (const demo of demos) await importJob(store, demo);

  const thread = computeOnThread(new URL('./worker/main.js', import.meta.url));
  const photoThread = photosOnThread(new URL('./photo-worker/main.js', import.meta.url), place.photos);
  const paper = pressOnThread(new URL('./paper-worker/main.js', import.meta.url), place.photos);
  const backups = keepBackups({
    plan,
    make: (now) =>
      backupOnThread(new URL('./backup-worker/main.js', import.meta.url), {
        place,
        asked: { folder: plan.folder, keep: plan.keep, now, program: packageVersion() },
      }),
    newest: async () => (await backupsIn(plan.folder))[0],
    now: () => new Date().toISOString(),
    tell: (word, failed) => (failed ? console.error(word) : console.log(word)),
  });
  const templates = readTemplates();
  const page = join(packageRoot(), 'dist', 'web');
  const table = place.kind === 'PostgreSQL' ? deviceTable(place.at) : undefined;
  const share: ShareParts = {
    ...deviceDesk(table ?? deviceFile(join(place.folder, 'devices.jsonl'))),
    scheme: asked.tls ? 'https' : 'http',
    addresses: () => (asked.share ? networkAddresses() : []),
  };
  const app = await buildApp({
    store,
    templates,
    machines: readWholeMachines(undefined, templates),
    compute: thread.compute,
    photos: { store: photos, ask: photoThread.ask },
    archives: zipArchives(join(place.folder, 'photos')),
    charts: { lists: readTestLists(), press: paper.press },
    share,
    ...(asked.tls ? { tls: { cert: readFileSync(asked.tls.cert), key: readFileSync(asked.tls.key) } } : {}),
    version: packageVersion(),
    description: readFileSync(join(packageRoot(), 'docs', 'openapi.json'), 'utf8'),
    backups: backups.state,
    ...(existsSync(join(page, 'index.html')) ? { page } : {}),
  });
  await app.listen({ port, host });
  const listening = (app.server.address() as AddressInfo).port;
  const address = `${share.scheme}://${loopback}:${listening}`;
  const [demo] = demos;
  const shown =
    demo && (await store.entries(demo.id)) ? `${address}/job/${encodeURIComponent(demo.id)}` : address;
  console.log(
    `Waywright is at ${address}\nOpen ${shown}\nThe workshop is kept in ${place.words}. Stop with Ctrl+C.`,
  );
  if (asked.share) console.log(await shareText(share, listening));

  void backups.look();

  let stopping = false;
  const stop = async (): Promise<void> => {
    if (stopping) return;
    stopping = true;
    backups.close();
    await app.close();
    await thread.close();
    await photoThread.close();
    await paper.close();
    await table?.close();
    if (store !== workshop.store) await store.close();
    await workshop.close();
  };
  process.on('SIGINT', () => void stop());
  process.on('SIGTERM', () => void stop());
}

main().catch((failure: unknown) => {
  const known =
    failure instanceof Fault ||
    failure instanceof BadInput ||
    failure instanceof RangeError ||
    (failure as { code?: string }).code !== undefined;
  console.error(known ? `Waywright cannot start: ${(failure as Error).message}` : failure);
  process.exitCode = 1;
});
