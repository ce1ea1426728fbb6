import type { ReactNode } from 'react';
import { Mark } from './mark.tsx';

interface Said {
  /** What a field's aria-describedby leads to. */
  readonly id?: string;
  /** How a screen reader hears of it: at once, when it is polite, or not until it is reached (left out). */
  readonly role?: 'alert' | 'status' | undefined;
  readonly children: ReactNode;
}

/** What was refused or went wrong, with its mark: colour is never alone. */
export function Wrong({ id, role, children }: Said) {
  return (
    <p className="wrong" id={id} role={role}>
      <Mark name="caution" size={20} />
      <span>{children}</span>
    </p>
  );
}

/** What is to be minded, with its mark. */
export function Caution({ id, role, children }: Said) {
  return (
    <p className="caution" id={id} role={role}>
      <Mark name="caution" size={20} />
      <span>{children}</span>
    </p>
  );
}
