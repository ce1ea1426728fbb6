import { randomBytes } from 'node:crypto';
import { rmSync } from 'node:fs';
import { rename, rm } from 'node:fs/promises';

/**
 * Writes a file beside its place first and then moves it there: it is whole, or as it was. Also when it is stopped with Ctrl+C: what was
 * half written goes, and the signal then takes its usual way (a shell says 130).
 * @throws what `write` or the move throws; nothing is left beside
 */
export async function besideFirst(file: string, write: (beside: string) => Promise<void>): Promise<void> {
  const beside = `${file}.${randomBytes(4).toString('hex')}.tmp`;
  const interrupted = () => {
    rmSync(beside, { force: true });
    process.kill(process.pid, 'SIGINT');
  };
  process.once('SIGINT', interrupted);
  try {
    await write(beside);
    await rename(beside, file);
  } catch (failure) {
    await rm(beside, { force: true });
    throw failure;
  } finally {
    process.off('SIGINT', interrupted);
  }
}
