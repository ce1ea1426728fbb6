import { parentPort, workerData } from 'node:worker_threads';
import { paperPhoto } from '../../../adapters/paper/paper-photo.ts';
import { pressPdf } from '../../../adapters/paper/press.ts';
import { photosAt } from '../../../adapters/photo/place.ts';
import { chartPaper } from '../../../draw/chart-paper.ts';
import type { PaperPhoto } from '../../../draw/chart-told.ts';
import { dayText } from '../../../shop/chart/job-account.ts';
import type { PaperAsk } from '../charts.ts';

const { folder, ask } = workerData as { readonly folder: string; readonly ask: PaperAsk };
const { report, made, paper } = ask;

const kept = photosAt(folder);
/** Photos made small side by side: enough for the processor's cores, few enough that they fit in memory whole. */
const atOnce = 4;
const told = [report.job, ...report.benches.map((bench) => bench.account)].flatMap(
  (account) => account?.photos ?? [],
);
const photos: PaperPhoto[] = [];
for (let k = 0; k < told.length; k += atOnce) {
  const some = await Promise.all(
    told.slice(k, k + atOnce).map(async ({ hash, pad, round }): Promise<PaperPhoto[]> => {
      const photo = await kept.open(hash);
      return photo ? [{ ...(await paperPhoto(photo.bytes)), words: `${pad}, round ${round}` }] : [];
    }),
  );
  photos.push(...some.flat());
}
parentPort!.postMessage(await pressPdf(chartPaper(report, { at: made, day: dayText(made) }, photos), paper));
