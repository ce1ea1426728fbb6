import { Worker } from 'node:worker_threads';
import { type BackupPlan, type BackupRecord, dueIn_ms } from '../../shop/keeping/backup.ts';
import { entriesIn } from '../../shop/keeping/workshop-sum.ts';

/** The last backup as a page shows it. */
export interface BackupShown {
  readonly number: number;
  readonly at: string;
  readonly bytes: number;
  readonly entries: number;
  readonly photos: number;
  readonly damaged_photos: number;
}

/** How backups stand. */
export interface BackupState {
  readonly on: boolean;
  readonly every_h: number;
  readonly keep: number;
  readonly last?: BackupShown;
  /** The last attempt failed: when and why; earlier backups are as they were. */
  readonly failed?: { readonly at: string; readonly why: string };
}

export const shownBackup = (record: BackupRecord): BackupShown => ({
  number: record.number,
  at: record.at,
  bytes: record.bytes,
  entries: entriesIn(record.sum),
  photos: record.sum.photos.length,
  damaged_photos: record.damaged_photos.length,
});

export interface BackupParts {
  readonly plan: BackupPlan & { readonly on: boolean; readonly folder: string };
  /** Makes one, somewhere that holds nobody up. */
  readonly make: (now: string) => Promise<BackupRecord>;
  /** The newest there is, also of before this program began. */
  readonly newest: () => Promise<BackupRecord | undefined>;
  readonly now: () => string;
  readonly tell: (word: string, failed: boolean) => void;
}

/** Looks at the clock so often; a machine that slept is seen soon after it woke. */
const look_ms = 60_000;

/** A failed attempt is made again after so long, not at each look. */
const again_ms = 3_600_000;

/** Makes backups by the clock, beginning with one at once where one is due. */
export function keepBackups(parts: BackupParts): {
  readonly state: () => Promise<BackupState>;
  /** One look at the clock: makes a backup if one is due. */
  readonly look: () => Promise<void>;
  readonly close: () => void;
} {
  const { plan, make, newest, now, tell } = parts;
  let failed: BackupState['failed'];
  let busy = false;

  async function look(): Promise<void> {
    if (!plan.on || busy) return;
    busy = true;
    try {
      const at = now();
      if (failed && Math.abs(Date.parse(at) - Date.parse(failed.at)) < again_ms) return;
      if (dueIn_ms((await newest())?.at, at, plan) > 0) return;
      const { number, file } = await make(at);
      failed = undefined;
      tell(`backup ${number} made: ${file}`, false);
    } catch (failure) {
      failed = { at: now(), why: String((failure as Error)?.message ?? failure) };
      tell(`no backup was made: ${failed.why}`, true);
    } finally {
      busy = false;
    }
  }

  const timer = setInterval(() => void look(), look_ms);
  timer.unref();
  return {
    look,
    state: async () => {
      const last = await newest().catch(() => undefined);
      const { on, every_h, keep } = plan;
      return {
        on,
        every_h,
        keep,
        ...(last ? { last: shownBackup(last) } : {}),
        ...(failed ? { failed } : {}),
      };
    },
    close: () => clearInterval(timer),
  };
}

/** Makes a backup on a thread of its own. */
export const backupOnThread = (script: URL, workerData: unknown): Promise<BackupRecord> =>
  new Promise((done, failed) => {
    const thread = new Worker(script, { workerData });
    thread.unref();
    thread.once('message', ({ made, why }: { made?: BackupRecord; why?: string }) =>
      made ? done(made) : failed(new Error(why)),
    );
    thread.once('error', failed);
    thread.once('exit', () => failed(new Error('the backup thread ended')));
  });
