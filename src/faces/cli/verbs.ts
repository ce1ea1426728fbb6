import type { Machine } from '../../core/order/machine.ts';
import type { ArchiveDoors } from './archive-doors.ts';
import { registerCard } from './card.ts';
import { type ChartDoors, registerChart } from './chart.ts';
import { registerGib } from './gib.ts';
import { registerHeights } from './heights.ts';
import { registerJob } from './job.ts';
import { registerJobRebuild } from './job-rebuild.ts';
import { registerKit } from './kit.ts';
import { registerLine } from './line.ts';
import { registerOrder } from './order.ts';
import { registerAxis } from './order-axis.ts';
import { registerParts } from './parts.ts';
import type { PictureDoors } from './picture-doors.ts';
import { registerPlate } from './plate.ts';
import { registerPractise } from './practise.ts';
import { registerPrint } from './print.ts';
import { registerRest } from './rest.ts';
import type { Register } from './run.ts';
import { registerServe, type StartServer } from './serve.ts';
import { registerSite } from './site.ts';
import { registerSteer } from './steer.ts';
import { registerSums } from './sums.ts';

/** Every verb of the command line, in the order that --help lists them. */
export function verbs(more: {
  readonly archive: ArchiveDoors;
  readonly picture: PictureDoors;
  readonly chart: ChartDoors;
  readonly machines: () => readonly Machine[];
  readonly serve: StartServer;
}): Register[] {
  const { archive, picture, chart, machines, serve } = more;
  return [
    registerSteer,
    registerRest,
    registerSite,
    registerParts,
    registerLine,
    registerPlate,
    registerPractise,
    registerJob(archive),
    registerJobRebuild({ machines, testLists: chart.testLists }),
    registerPrint(picture),
    registerCard(picture),
    registerChart(chart),
    registerSums,
    registerKit,
    registerOrder({ machines }),
    registerHeights({ machines }),
    registerAxis({ machines }),
    registerGib({ machines }),
    registerServe(serve),
  ];
}
