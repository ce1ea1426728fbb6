import type { ReactNode } from 'react';
import { Link } from 'wouter';

/** The primary deed at the foot: ink, full width, a verb and its object, and a quiet word at its end. */
export const GoLink = (props: {
  readonly to: string;
  readonly id?: string;
  readonly blue?: boolean;
  readonly mark?: ReactNode;
  readonly children: ReactNode;
  readonly end?: ReactNode;
}) => (
  <Link id={props.id} className={props.blue ? 'go blue' : 'go'} href={props.to}>
    {props.mark}
    {props.children}
    {props.end === undefined ? null : <span className="end">{props.end}</span>}
  </Link>
);

/** The same as a button, for deeds done on the spot. */
export const GoButton = (props: {
  readonly onPress: () => void;
  readonly blue?: boolean;
  readonly mark?: ReactNode;
  readonly children: ReactNode;
  readonly end?: ReactNode;
}) => (
  <button type="button" className={props.blue ? 'go blue' : 'go'} onClick={props.onPress}>
    {props.mark}
    {props.children}
    {props.end === undefined ? null : <span className="end">{props.end}</span>}
  </button>
);
