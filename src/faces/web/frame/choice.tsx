import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { Mark } from './mark.tsx';

/**
 * One of the rows that lead on: its name, what it is, and the arrow.
 * @param onClick  what it does, where it leads to no address
 * @param open     of a row that unfolds something below it: whether it is unfolded; it bears a plus instead of an arrow
 */
export function Choice(props: {
  readonly name: string;
  readonly note: ReactNode;
  readonly href?: string;
  readonly onClick?: () => void;
  readonly open?: boolean;
}) {
  const inside = (
    <>
      <span>
        <b>{props.name}</b>
        <small>{props.note}</small>
      </span>
      <span />
      <Mark name={props.open === undefined ? 'arrow right' : 'plus'} size={20} />
    </>
  );
  return props.href === undefined ? (
    <button type="button" className="choice" aria-expanded={props.open} onClick={props.onClick}>
      {inside}
    </button>
  ) : (
    <Link className="choice" href={props.href}>
      {inside}
    </Link>
  );
}
