import { parentPort, workerData } from 'node:worker_threads';
import { paperPhoto } from '../../../adapters/paper/paper-photo.ts';
import { pressPdf } from '../../../adapters/paper/press.ts';
import { photoFolder } from '../../../adapters/photo/folder.ts';
import { chartPaper } from '../../../draw/chart-paper.ts';
import type { PaperPhoto } from '../../../draw/chart-told.ts';
import { dayText } from '../../../shop/chart/job-account.ts';
import type { PaperAsk } from '../charts.ts';

const { folder, ask } = workerData as { readonly folder: string; readonly ask: PaperAsk };
const { report, made, paper } = ask;

const kept = photoFolder(folder);
const photos: PaperPhoto[] = [];
for (const { hash, pad, round } of report.job?.photos ?? []) {
  const photo = await kept.open(hash);
  if (photo) photos.push({ ...(await paperPhoto(photo.bytes)), words: `${pad}, round ${round}` });
}
parentPort!.postMessage(await pressPdf(chartPaper(report, { at: made, day: dayText(made) }, photos), paper));
