import type { BenchView } from './bench.tsx';
export const AlarmBench = (_: { view: BenchView; steer: unknown; alarm: unknown }) => null;
