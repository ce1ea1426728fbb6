import type { JobFile } from '../../../contract/job-file.ts';
import type { KitFile } from '../../../contract/kit-entry.ts';
import type { writtenSteerInput } from '../../../contract/written-steer.ts';
import type { Entry } from '../../../core/ledger/entry.ts';
import type { KitEntry } from '../../../core/ledger/kit-ledger.ts';
import type { Template } from '../../../core/ledger/template.ts';
import type { Machine } from '../../../core/order/machine.ts';
import type { SteerAnswer } from '../../../core/plan/answer.ts';
import type { NoAnswer } from '../../../core/plan/problem.ts';
import type { JobAnswer } from '../../../shop/answer-job.ts';
import type { PhotosHere, PhotosTaken } from '../../../shop/archive/carried-words.ts';
import type { ChartAnswer, ListOffered } from '../../../shop/chart/chart-answer.ts';
import type { ChartReport } from '../../../shop/chart/chart-report.ts';
import type { GibAnswer } from '../../../shop/gib.ts';
import type { KitReport } from '../../../shop/kit/kit-report.ts';
import type { JobListed } from '../../../shop/list-jobs.ts';
import type { AxisAnswer } from '../../../shop/order/axis.ts';
import type { HeightsAnswer } from '../../../shop/order/heights.ts';
import type { OrderAnswer } from '../../../shop/order/order.ts';
import type { PartsAnswer } from '../../../shop/parts.ts';
import type {
  PracticeMeasured,
  PracticePrinted,
  PracticeTruth,
} from '../../../shop/practise/practice-job.ts';
import type { CornersAnswer, KeptPhoto } from '../../../shop/print/photo-desk.ts';
import type { ShownReading } from '../../../shop/print/photo-reading.ts';
import type { Rested } from '../../../shop/rest.ts';
import type { Device } from '../../../shop/share/devices.ts';
import type { SiteAnswer } from '../../../shop/site.ts';
import type { StoreFacts } from '../../../shop/store.ts';
import type { SumAnswer } from '../../../shop/sums/sum-answer.ts';
import type { AlongAnswer } from '../../../shop/survey/along.ts';
import type { LineAnswer } from '../../../shop/survey/line.ts';
import type { PlateAnswer } from '../../../shop/survey/plate.ts';
import type { BackupState } from '../backups.ts';
import type { RefusalBody } from '../refusals.ts';

/** Everything the server answers with as JSON, by the name that routes.ts calls it; scripts/openapi.mjs reads it. */
export interface Answers {
  readonly Description: Record<string, unknown>;
  readonly Alive: { readonly ok: true; readonly version: string };
  readonly Ready: { readonly ready: true };
  readonly Workshop: {
    readonly version: string;
    readonly store: StoreFacts;
    readonly photos: { readonly count: number; readonly bytes: number };
    readonly backups?: BackupState;
  };
  readonly Refused: RefusalBody;
  readonly RefusedNoAnswer: RefusalBody & Partial<Pick<NoAnswer, 'limits' | 'why'>>;
  readonly Shared: {
    readonly you:
      | { readonly is: 'nobody' | 'owner' }
      | { readonly is: 'device'; readonly name: string; readonly role: Device['role'] };
    readonly secure?: boolean;
    readonly addresses?: readonly string[];
    readonly devices?: readonly Device[];
  };
  readonly Invited: {
    readonly code: string;
    readonly role: Device['role'];
    readonly ends: string;
    readonly links: readonly {
      readonly link: string;
      readonly address: string;
      readonly qr: { readonly size: number; readonly path: string };
    }[];
  };
  readonly DevicesLeft: { readonly devices: readonly Device[] };
  readonly Nothing: Record<string, never>;
  readonly Joined: { readonly name: string; readonly role: Device['role'] };
  readonly Templates: readonly Template[];
  readonly Jobs: { readonly jobs: readonly JobListed[] };
  readonly Kept: { readonly seq: number };
  readonly KeptAs: { readonly seq: number; readonly id: string };
  readonly KeptWithPhotos: { readonly seq: number; readonly id: string; readonly photos: PhotosTaken };
  readonly Ledger: { readonly id: string; readonly seq: number; readonly entries: readonly Entry[] };
  readonly Answer: JobAnswer;
  readonly JobAsSteered: ReturnType<typeof writtenSteerInput>;
  readonly JobFile: JobFile;
  readonly Photos: PhotosHere;
  readonly Measured: PracticeMeasured;
  readonly Printed: PracticePrinted;
  readonly Truth: PracticeTruth;
  readonly Kit: { readonly entries: readonly KitEntry[] };
  readonly KitFile: KitFile;
  readonly Steered: SteerAnswer;
  readonly Rested: Rested;
  readonly Sited: SiteAnswer;
  readonly Parts: PartsAnswer;
  readonly Line: LineAnswer | AlongAnswer;
  readonly Plate: PlateAnswer;
  readonly KitReport: KitReport;
  readonly Sum: SumAnswer;
  readonly Machines: { readonly machines: readonly Machine[] };
  readonly MachineChecked: { readonly ok: true; readonly title: string; readonly order: readonly string[] };
  readonly Order: OrderAnswer;
  readonly Bench: { readonly job: string };
  readonly Heights: HeightsAnswer;
  readonly Axis: AxisAnswer & { readonly steer?: SteerAnswer };
  readonly Gib: GibAnswer & { readonly steer?: SteerAnswer };
  readonly Report: ChartReport;
  readonly Charts: { readonly lists: readonly ListOffered[] };
  readonly Chart: ChartAnswer;
  readonly PhotoKept: Omit<KeptPhoto, 'again'>;
  readonly PhotoRead: ShownReading;
  readonly ToldCorners: CornersAnswer;
}
