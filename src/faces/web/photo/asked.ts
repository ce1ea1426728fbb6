import { useQuery } from '@tanstack/react-query';
import type { Exclusion } from '../../../core/print/exclusion.ts';
import type { Corners, SurfaceSize } from '../../../core/print/picture.ts';
import type { CornersAnswer } from '../../../shop/print/photo-desk.ts';
import type { ShownReading } from '../../../shop/print/photo-reading.ts';
import { photoAddress, posted, Refusing } from '../keep/server.ts';

/** A photo's answers never change: what was asked once is not asked again. */
const settled = { staleTime: Number.POSITIVE_INFINITY, gcTime: 600_000 } as const;
/** Many photos at once, or a thread that took too long: worth asking again. */
const retry = (times: number, failure: Error): boolean =>
  times < 4 && (!(failure instanceof Refusing) || failure.status === 503);

export interface ReadAsk {
  readonly hash: string;
  readonly corners: Corners;
  readonly size: SurfaceSize;
  readonly cell_mm: 25 | 25.4;
  readonly zones: number;
  /** Grooves and holes, out of the net area; absent: none. */
  readonly exclusions?: readonly Exclusion[];
}

/** Where the corners are, as found by the shop; asked while `hash` is given. */
export const useCorners = (hash: string | undefined, size: SurfaceSize) =>
  useQuery({
    queryKey: ['photo', hash, 'corners', size],
    // Given up, it is worked for no longer: the signal closes the connection.
    queryFn: ({ signal }) => posted<CornersAnswer>(`${photoAddress(hash!)}/corners`, { size }, signal),
    enabled: hash !== undefined,
    retry,
    ...settled,
  });

const butMarks = (ask: ReadAsk | undefined): string => JSON.stringify({ ...ask, exclusions: undefined });

/** A photo's reading; asked while there is something to ask. What was read with other marks stands until this is read. */
export const useReading = (ask: ReadAsk | undefined) =>
  useQuery<ShownReading>({
    queryKey: ['photo', ask?.hash, 'read', ask],
    queryFn: ({ signal }) => {
      const { hash, ...body } = ask!;
      return posted<ShownReading>(`${photoAddress(hash)}/read`, body, signal);
    },
    enabled: ask !== undefined,
    placeholderData: (before, query) =>
      ask && butMarks(query?.queryKey[3] as ReadAsk | undefined) === butMarks(ask) ? before : undefined,
    retry,
    ...settled,
  });
