import { parentPort, workerData } from 'node:worker_threads';
import { type BackupAsked, makeBackup } from '../../../adapters/keeping/backup-folder.ts';
import { withWorkshop } from '../../../adapters/keeping/keeping.ts';
import type { WorkshopPlace } from '../../../adapters/workshop/place.ts';

const { place, asked } = workerData as { readonly place: WorkshopPlace; readonly asked: BackupAsked };

try {
  parentPort!.postMessage({ made: await withWorkshop(place, (workshop) => makeBackup(workshop, asked)) });
} catch (failure) {
  parentPort!.postMessage({ why: String((failure as Error)?.message ?? failure) });
}
