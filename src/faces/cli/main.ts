#!/usr/bin/env node
import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { readFile, rename, unlink, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { isZip, openZip } from '../../adapters/archive/zip-read.ts';
import { zipOf } from '../../adapters/archive/zip-write.ts';
import { packageRoot, packageVersion } from '../../adapters/file/package-root.ts';
import { readTemplates } from '../../adapters/file/templates.ts';
import { readTestLists } from '../../adapters/file/test-lists.ts';
import { readWholeMachines } from '../../adapters/file/whole-machines.ts';
import { makeBackup } from '../../adapters/keeping/backup-folder.ts';
import {
  backupSettings,
  checkWorkshop,
  exportWorkshop,
  moveWorkshop,
  withWorkshop,
} from '../../adapters/keeping/keeping.ts';
import { restoreWorkshop } from '../../adapters/keeping/restore.ts';
import { photoFile } from '../../adapters/photo/photo-file.ts';
import { photosAt } from '../../adapters/photo/place.ts';
import { solveWithHighs } from '../../adapters/solver/highs.ts';
import { openWorkshop, workshopPlace } from '../../adapters/workshop/open-workshop.ts';
import { Fault } from '../../shop/store.ts';
import type { ArchiveDoors } from './archive-doors.ts';
import type { ChartDoors } from './chart.ts';
import type { Doors } from './doors.ts';
import { exitCodes } from './doors.ts';
import { faultText } from './fault-text.ts';
import { type KeepingDoors, registerKeeping } from './keeping.ts';
import type { PictureDoors } from './picture-doors.ts';
import { run } from './run.ts';
import type { StartServer } from './serve.ts';
import { verbs } from './verbs.ts';

async function standardInput(): Promise<string> {
  const parts: Buffer[] = [];
  for await (const part of process.stdin) parts.push(part as Buffer);
  return Buffer.concat(parts).toString('utf8');
}

/** Written beside its place first, then moved there: a file is whole or as it was. */
async function besideFirst(file: string, write: (beside: string) => Promise<void>): Promise<void> {
  const beside = `${file}.${randomBytes(4).toString('hex')}.tmp`;
  try {
    await write(beside);
    await rename(beside, file);
  } catch (failure) {
    await unlink(beside).catch(() => undefined);
    throw failure;
  }
}

const writeWhole = (file: string, text: string | Uint8Array): Promise<void> =>
  besideFirst(file, (beside) => writeFile(beside, text));

// Whoever reads the output may have seen enough (`| head`): that is no failure.
process.stdout.on('error', (failure: NodeJS.ErrnoException) => {
  if (failure.code !== 'EPIPE') throw failure;
  process.exit(0);
});

const doors: Doors = {
  readText: (file) => (file === '-' ? standardInput() : readFile(file, 'utf8')),
  writeText: writeWhole,
  say: (text) => process.stdout.write(`${text}\n`),
  complain: (text) => process.stderr.write(`${text}\n`),
  solve: solveWithHighs,
  withStore: async (work) => {
    const workshop = await openWorkshop(workshopPlace());
    try {
      return await work(workshop.store);
    } finally {
      await workshop.close();
    }
  },
  templates: () => readTemplates(),
  now: () => new Date().toISOString(),
};

const photos = () => photosAt(workshopPlace().photos);

const archiveDoors: ArchiveDoors = {
  photos,
  packed: zipOf,
  open: openZip,
  isArchive: async (file) => file !== '-' && (await isZip(file)),
  writePieces: (file, pieces) => besideFirst(file, (beside) => pipeline(pieces, createWriteStream(beside))),
};

// The decoder takes longer to load than most verbs take to answer, so only those that need it wait for it.
const overlays = () => import('../../adapters/photo/overlay.ts');

const pictureDoors: PictureDoors = {
  readBytes: photoFile,
  writeBytes: writeWhole,
  decode: async (bytes) => (await import('../../adapters/photo/decode.ts')).decodePhoto(bytes),
  laidOver: async (photo, svg) => (await overlays()).drawnOver(photo, svg),
  upright: async (photo) => (await overlays()).uprightJpeg(photo),
};

// So are the PDF writer and its faces.
const chartDoors: ChartDoors = {
  testLists: () => readTestLists(),
  press: async (document, paper) => (await import('../../adapters/paper/press.ts')).pressPdf(document, paper),
  faceRule: async () => (await import('../../adapters/paper/face.ts')).faceRule(),
  writeBytes: writeWhole,
  paperPhoto: async (hash) => {
    const kept = await photos().open(hash);
    return kept && (await import('../../adapters/paper/paper-photo.ts')).paperPhoto(kept.bytes);
  },
};

/** The server is a program of its own; signals reach it as they reach this one. */
const served: StartServer = (words, port) =>
  new Promise((ended, failed) => {
    const server = spawn(
      process.execPath,
      [join(packageRoot(), 'dist', 'faces', 'server', 'main.js'), ...words],
      {
        stdio: 'inherit',
        env: { ...process.env, ...(port === undefined ? {} : { PORT: port }) },
      },
    );
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => server.kill(signal));
    server.once('error', failed);
    server.once('exit', (code) => ended(code ?? 0));
  });

const keepingDoors: KeepingDoors = {
  place: () => workshopPlace().words,
  move: (to) => moveWorkshop(workshopPlace(), to),
  backup: async (folder, keep) => {
    const usual = backupSettings(workshopPlace());
    const asked = {
      folder: folder === undefined ? usual.folder : resolve(folder),
      keep: keep ?? usual.keep,
      now: doors.now(),
      program: packageVersion(),
    };
    return { record: await withWorkshop(workshopPlace(), (open) => makeBackup(open, asked)), ...asked };
  },
  restore: (file, replace) => restoreWorkshop(resolve(file), workshopPlace(), replace),
  exportTo: (file) => exportWorkshop(workshopPlace(), file),
  check: () => checkWorkshop(workshopPlace()),
};

try {
  process.exitCode = await run(
    process.argv.slice(2),
    doors,
    [
      ...verbs({
        archive: archiveDoors,
        picture: pictureDoors,
        chart: chartDoors,
        machines: readWholeMachines,
        serve: served,
      }),
      registerKeeping(keepingDoors),
    ],
    packageVersion(),
  );
} catch (failure) {
  const fault = failure as NodeJS.ErrnoException;
  if (!(failure instanceof Fault) && fault.code === undefined) throw failure;
  doors.complain(faultText(fault));
  process.exitCode = exitCodes.badInput;
}
