import type { ReactNode } from 'react';
import type { NextDeed } from '../../../shop/bench/next-deed.ts';
import { GoButton, GoLink } from '../frame/go.tsx';
import { Strokes } from '../frame/mark.tsx';

/** Where each deed is done. */
const placeOf = (id: string, deed: NextDeed): string => {
  const base = `/job/${encodeURIComponent(id)}`;
  switch (deed.kind) {
    case 'measure':
      return `${base}/measure/${encodeURIComponent(deed.setup ?? '')}`;
    case 'print':
      return `${base}/print`;
    case 'no answer':
      return `${base}/measure`;
    case 'signed':
      return `${base}/ledger`;
    default:
      return `${base}/scrape`;
  }
};

/** The foot of the bench: one line of what follows, and the one thing to do. */
export function DeedFoot(props: {
  readonly id: string;
  readonly deed: NextDeed;
  readonly note?: ReactNode;
  readonly beside?: ReactNode;
  readonly end?: ReactNode;
  /** For deeds that are done here and not on a screen of their own. */
  readonly onPress?: () => void;
}) {
  const { id, deed, note, beside, end = deed.end, onPress } = props;
  const mark =
    deed.kind === 'pass' || deed.kind === 'spot' ? <Strokes pass={deed.pass ?? 1} size={26} /> : undefined;
  const blue = deed.kind === 'sign';
  return (
    <footer className="foot">
      {note === undefined ? null : <p>{note}</p>}
      {beside === undefined ? null : <div className="beside">{beside}</div>}
      {onPress ? (
        <GoButton onPress={onPress} mark={mark} end={end} blue={blue}>
          {deed.words}
        </GoButton>
      ) : (
        <GoLink to={placeOf(id, deed)} mark={mark} end={end} blue={blue}>
          {deed.words}
        </GoLink>
      )}
    </footer>
  );
}
