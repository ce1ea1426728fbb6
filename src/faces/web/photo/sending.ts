import { useCallback, useEffect, useRef, useState } from 'react';
import { photoRefusal } from '../../../shop/print/photo-words.ts';
import { Refusing, sentPhoto } from '../keep/server.ts';
import { asJpeg } from './as-jpeg.ts';
import type { KeptHead } from './photo-draft.ts';
import { holdPhoto, leaveToScreen, letGoPhoto, waitingPhoto } from './waiting-photo.ts';

/** Where a photo is on its way to the shop. */
export type Sending =
  | { readonly is: 'none' }
  | {
      readonly is: 'sending' | 'waiting';
      readonly photo: Blob;
      readonly why?: string;
      readonly share?: number;
    }
  /** Stopped by hand: it is on this screen only, until it is sent after all or another is taken. */
  | { readonly is: 'stopped'; readonly photo: Blob }
  | { readonly is: 'refused'; readonly why: string };

const retry_ms = 3_000;

/**
 * Sends a photo as soon as it is taken; what the shop has not kept lies on this phone under `key`, and is sent by itself when the
 * shop is in reach again, also after a reload.
 */
export function useSending(
  key: string,
  onKept: (photo: KeptHead) => void,
): readonly [Sending, (photo: Blob) => void, () => void] {
  const [sending, setSending] = useState<Sending>({ is: 'none' });
  const kept = useRef(onKept);
  kept.current = onKept;
  const alive = useRef(0);
  const stopper = useRef<AbortController>(undefined);

  const send = useCallback(
    async (taken: Blob, turn: number) => {
      let photo = taken;
      const mine = () => alive.current === turn;
      setSending({ is: 'sending', photo });
      for (;;) {
        const back = leaveToScreen(key);
        try {
          stopper.current = new AbortController();
          const head = await sentPhoto(photo, {
            signal: stopper.current.signal,
            onSent: (share) => {
              if (mine()) setSending({ is: 'sending', photo, share });
            },
          });
          if (!mine()) return;
          await letGoPhoto(key).catch(() => undefined);
          setSending({ is: 'none' });
          kept.current(head);
          return;
        } catch (failure) {
          if (!mine()) return;
          const again =
            !(failure instanceof Refusing) ||
            failure.status >= 500 ||
            [401, 408, 429].includes(failure.status);
          if (!again) {
            const jpeg = failure.status === 400 ? await asJpeg(photo) : undefined;
            if (!mine()) return;
            if (jpeg) {
              photo = jpeg;
              await holdPhoto(key, photo).catch(() => undefined);
              continue;
            }
            await letGoPhoto(key).catch(() => undefined);
            setSending({ is: 'refused', why: photoRefusal(failure.refusal) });
            return;
          }
          const why = failure instanceof Refusing ? failure.message : undefined;
          setSending({ is: 'waiting', photo, ...(why === undefined ? {} : { why }) });
          await backInReach();
          if (!mine()) return;
        } finally {
          back();
        }
      }
    },
    [key],
  );

  useEffect(() => {
    const turn = ++alive.current;
    waitingPhoto(key)
      .then((photo) => {
        if (photo && alive.current === turn) void send(photo, turn);
      })
      .catch(() => undefined);
    return () => {
      alive.current++;
    };
  }, [key, send]);

  const take = useCallback(
    (photo: Blob) => {
      const turn = ++alive.current;
      // Written down first; where the phone has no room for it, it is sent all the same.
      void holdPhoto(key, photo)
        .catch(() => undefined)
        .then(() => send(photo, turn));
    },
    [key, send],
  );
  const stop = useCallback(() => {
    if (sending.is !== 'sending' && sending.is !== 'waiting') return;
    alive.current++;
    stopper.current?.abort();
    // Else it would be sent by itself from the other screens.
    void letGoPhoto(key).catch(() => undefined);
    setSending({ is: 'stopped', photo: sending.photo });
  }, [key, sending]);
  return [sending, take, stop];
}

/** After a while, or as soon as the phone says that it is on the network again. */
const backInReach = (): Promise<void> =>
  new Promise((done) => {
    const go = () => {
      clearTimeout(timer);
      removeEventListener('online', go);
      done();
    };
    const timer = setTimeout(go, retry_ms);
    addEventListener('online', go);
  });
