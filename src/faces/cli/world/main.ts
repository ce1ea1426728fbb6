import { spawn } from 'node:child_process';
import { createWriteStream } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { besideFirst } from '../../../adapters/file/beside-first.ts';
import { packageRoot, packageVersion } from '../../../adapters/file/package-root.ts';
import { readTemplates } from '../../../adapters/file/templates.ts';
import { readTestLists } from '../../../adapters/file/test-lists.ts';
import { readWholeMachines } from '../../../adapters/file/whole-machines.ts';
import { workshopPlace } from '../../../adapters/workshop/place.ts';
import type { ArchiveDoors } from '../archive-doors.ts';
import type { ChartDoors } from '../chart.ts';
import type { Doors } from '../doors.ts';
import type { KeepingDoors } from '../keeping.ts';
import type { PictureDoors } from '../picture-doors.ts';
import type { StartServer } from '../serve.ts';
import { terminal } from '../terminal.ts';
import type { MoreDoors } from '../verbs.ts';

// What a verb needs of the world is read from the disk when it is first used: the picture decoder, the PDF writer, the store
// and the ZIP reader each take longer to load than most verbs take to answer.
const overlay = () => import('../../../adapters/photo/overlay.ts');
const workshops = () => import('../../../adapters/workshop/open-workshop.ts');
const keepingDesk = () => import('../../../adapters/keeping/keeping.ts');
const zipRead = () => import('../../../adapters/archive/zip-read.ts');

async function standardInput(): Promise<string> {
  const parts: Buffer[] = [];
  for await (const part of process.stdin) parts.push(part as Buffer);
  return Buffer.concat(parts).toString('utf8');
}

/** A file is whole or as it was. */
const writeWhole = (file: string, text: string | Uint8Array): Promise<void> =>
  besideFirst(file, (beside) => writeFile(beside, text));

const photos = async () =>
  (await import('../../../adapters/photo/place.ts')).photosAt(workshopPlace().photos);

/** The usual doors, onto this machine. */
export const doors: Doors = {
  ...terminal,
  readText: (file) => (file === '-' ? standardInput() : readFile(file, 'utf8')),
  writeText: writeWhole,
  solve: async (program) => (await import('../../../adapters/solver/highs.ts')).solveWithHighs(program),
  withStore: async (work) => {
    const workshop = await (await workshops()).openWorkshop(workshopPlace());
    try {
      return await work(workshop.store);
    } finally {
      await workshop.close();
    }
  },
  templates: () => readTemplates(),
  now: () => new Date().toISOString(),
};

const archive: ArchiveDoors = {
  photos,
  packed: async function* (parts) {
    yield* (await import('../../../adapters/archive/zip-write.ts')).zipOf(parts);
  },
  open: async (file) => (await zipRead()).openZip(file),
  isArchive: async (file) => file !== '-' && (await (await zipRead()).isZip(file)),
  writePieces: (file, pieces) => besideFirst(file, (beside) => pipeline(pieces, createWriteStream(beside))),
};

const picture: PictureDoors = {
  readBytes: async (file) => (await import('../../../adapters/photo/photo-file.ts')).photoFile(file),
  writeBytes: writeWhole,
  decode: async (bytes) => (await import('../../../adapters/photo/decode.ts')).decodePhoto(bytes),
  laidOver: async (photo, svg) => (await overlay()).drawnOver(photo, svg),
  upright: async (photo) => (await overlay()).uprightJpeg(photo),
};

const chart: ChartDoors = {
  testLists: () => readTestLists(),
  press: async (document, paper) =>
    (await import('../../../adapters/paper/press.ts')).pressPdf(document, paper),
  faceRule: async () => (await import('../../../adapters/paper/face.ts')).faceRule(),
  writeBytes: writeWhole,
  paperPhoto: async (hash) => {
    const kept = await (await photos()).open(hash);
    return kept && (await import('../../../adapters/paper/paper-photo.ts')).paperPhoto(kept.bytes);
  },
};

/** The server is a program of its own; signals reach it as they reach this one. */
const serve: StartServer = (words, port) =>
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

const keeping: KeepingDoors = {
  place: () => workshopPlace().words,
  move: async (to) => (await keepingDesk()).moveWorkshop(workshopPlace(), to),
  backup: async (folder, keep) => {
    const { backupSettings, withWorkshop } = await keepingDesk();
    const { makeBackup } = await import('../../../adapters/keeping/backup-folder.ts');
    const usual = backupSettings(workshopPlace());
    const asked = {
      folder: folder === undefined ? usual.folder : resolve(folder),
      keep: keep ?? usual.keep,
      now: doors.now(),
      program: packageVersion(),
    };
    return { record: await withWorkshop(workshopPlace(), (open) => makeBackup(open, asked)), ...asked };
  },
  restore: async (file, replace) =>
    (await import('../../../adapters/keeping/restore.ts')).restoreWorkshop(
      resolve(file),
      workshopPlace(),
      replace,
    ),
  exportTo: async (file) => (await keepingDesk()).exportWorkshop(workshopPlace(), file),
  check: async () => (await keepingDesk()).checkWorkshop(workshopPlace()),
};

/** What single verbs need beside them. */
export const more: MoreDoors = { archive, picture, chart, keeping, serve, machines: readWholeMachines };
