import { useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import type { ChartAnswer, ListOffered } from '../../../shop/chart/chart-answer.ts';
import { type OpenJob, outbox } from '../keep/jobs.ts';
import { fetched, jobAddress, posted, Refusing } from '../keep/server.ts';
import type { Units } from '../keep/settings.ts';
import type { typedOf } from './chart-draft.ts';

const again_ms = 3_000;
/** A person types a figure in less; asking for each key would only keep the shop busy. */
const pause_ms = 250;

/** One that could not be asked is asked again; what was refused stays so until something else is typed. */
const lasting = {
  retry: false,
  refetchInterval: ({ state }: { readonly state: { readonly error: Error | null } }) =>
    state.error && !(state.error instanceof Refusing && state.error.status < 500)
      ? again_ms
      : (false as const),
};

/** The lists of tests that the shop has. */
export const useLists = () =>
  useQuery({
    queryKey: ['charts'],
    queryFn: async () => (await fetched<{ lists: ListOffered[] }>('/api/charts')).lists,
    staleTime: Number.POSITIVE_INFINITY,
    ...lasting,
  });

/** What is asked beside what the ledger holds. */
export interface ChartFileAsked {
  readonly typed: ReturnType<typeof typedOf>;
}

/** What was typed, once the typing has paused. */
function useSettled(file: ChartFileAsked): ChartFileAsked {
  const text = JSON.stringify(file);
  const [settled, settle] = useState(text);
  useEffect(() => {
    const timer = setTimeout(() => settle(text), pause_ms);
    return () => clearTimeout(timer);
  }, [text]);
  return JSON.parse(settled) as ChartFileAsked;
}

/** The chart of what is typed; while it is worked out, the one before it stands. */
export function useChart({ id, job }: OpenJob, file: ChartFileAsked, units: Units, ready: boolean) {
  const body = { ...useSettled(file), units };
  return useQuery({
    queryKey: ['chart', id, job.entries.length, body],
    queryFn: async ({ signal }) => {
      await outbox.deliver();
      return posted<ChartAnswer>(`${jobAddress(id)}/chart`, body, signal);
    },
    placeholderData: (before) => before,
    staleTime: Number.POSITIVE_INFINITY,
    enabled: ready,
    ...lasting,
  });
}

/** Makes the paper of what is typed. @throws Refusing, or TypeError when the shop is out of reach */
export async function chartPdf(
  id: string,
  file: ChartFileAsked,
  units: Units,
  paper: 'a4' | 'letter',
  signal: AbortSignal,
): Promise<Blob> {
  await outbox.deliver();
  const response = await fetch(`${jobAddress(id)}/chart.pdf`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ ...file, units, paper }),
    signal,
  });
  if (response.ok) return response.blob();
  const { message = `the shop answered ${response.status}` } = (await response.json().catch(() => ({}))) as {
    message?: string;
  };
  throw new Refusing(response.status, { code: 'no paper', message });
}

/** Why there is no chart, in words. */
export const whyNot = (failure: Error): string =>
  failure instanceof Refusing
    ? `${failure.message} What you typed stays here.`
    : 'The shop is out of reach. What you typed is kept on this device; the chart is asked for again by itself.';

/** Why there is no paper, in words: nobody asks for it again but by hand. */
export const whyNoPaper = (failure: Error): string =>
  failure instanceof Refusing
    ? whyNot(failure)
    : 'The shop is out of reach: no PDF was made. What you typed is kept on this device; make it again when the shop is back.';
