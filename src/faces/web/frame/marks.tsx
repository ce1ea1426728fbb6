import type { Verdict } from '../../../core/prove/verdict.ts';

/** Small drawn marks: arrows and ticks are not in the face, so they are drawn. All take the colour of their text. */
const line = { fill: 'none', stroke: 'currentColor' } as const;

export const MenuMark = () => (
  <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
    <path d="M3 6h16M3 11h16M3 16h10" {...line} strokeWidth="2.2" />
  </svg>
);

const sheet = 'M2 2h12v9l-3 3H2z';

export const KeptMark = () => (
  <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true">
    <path d={sheet} {...line} strokeWidth="1.6" />
    <path d="M4.5 7.5l2.4 2.5 4.4-5" {...line} strokeWidth="1.7" />
  </svg>
);

export const WaitingMark = () => (
  <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true">
    <path d={sheet} {...line} strokeWidth="1.6" />
    <path d="M4.5 8h1.4M7.3 8h1.4M10.1 8h1.4" {...line} strokeWidth="2" />
  </svg>
);

/** Look here: beside cautions, questions and what cannot be read. */
export const LookMark = () => (
  <svg width="19" height="19" viewBox="0 0 16 16" aria-hidden="true">
    <path d={sheet} {...line} strokeWidth="1.6" />
    <path d="M8 4.2v4.4M8 10.4v1.5" {...line} strokeWidth="1.8" />
  </svg>
);

/** Strokes of one pass; odd passes lean one way, even ones the other, as on the metal. */
export const StrokesMark = ({ pass, size = 24 }: { readonly pass: number; readonly size?: number }) => (
  <svg width={size * 1.4} height={size} viewBox="0 0 28 20" aria-hidden="true">
    <path
      d={pass % 2 === 1 ? 'M3 19L11 1M11 19L19 1M19 19L27 1' : 'M1 1L9 19M9 1L17 19M17 1L25 19'}
      {...line}
      strokeWidth="3.4"
    />
  </svg>
);

export const TurnMark = () => (
  <svg width="22" height="20" viewBox="0 0 22 20" aria-hidden="true">
    <path d="M8 15.5C3 15 1 12.5 1 10c0-3.5 4-6 9.5-6S20 6.5 20 9.5c0 2.5-2.5 4.5-6 5.200" {...line} strokeWidth="1.8" />
    <path d="M17.5 11.5l-4 3.300 4.300 2.700" {...line} strokeWidth="1.8" />
  </svg>
);

/** A value against its band, small: a dot between two bars, on one, or beyond. */
export function VerdictMark({ verdict, side }: { readonly verdict: Verdict; readonly side: -1 | 1 }) {
  const flip = side === 1 ? undefined : 'matrix(-1 0 0 1 36 0)';
  return (
    <svg width="36" height="30" viewBox="0 0 36 30" aria-hidden="true">
      <g transform={flip}>
        {verdict === 'within' && (
          <>
            <path d="M7 2v26M29 2v26" {...line} strokeWidth="4" />
            <circle cx="18" cy="15" r="6" fill="currentColor" />
          </>
        )}
        {verdict === 'not proven' && (
          <>
            <path d="M5 2v26M25 2v6M25 22v6" {...line} strokeWidth="4" />
            <ellipse cx="25" cy="15" rx="8" ry="6.5" {...line} strokeWidth="2.6" />
            <path d="M25 9v12" {...line} strokeWidth="2" />
          </>
        )}
        {verdict === 'outside' && (
          <>
            <path d="M5 2v26M22 2v26" {...line} strokeWidth="4" />
            <circle cx="31" cy="15" r="5" fill="currentColor" />
          </>
        )}
      </g>
    </svg>
  );
}

/** It went the other way than asked: dashed there, solid back. */
export const WrongWayMark = () => (
  <svg width="56" height="52" viewBox="0 0 56 52" aria-hidden="true">
    <path d="M2 14h34" {...line} strokeWidth="5" strokeDasharray="8 5" />
    <path d="M34 3l12 11-12 11" {...line} strokeWidth="5" strokeDasharray="7 4" />
    <path d="M54 38H10" {...line} strokeWidth="6" />
    <path d="M22 26L8 38l14 12" {...line} strokeWidth="6" />
  </svg>
);

/** The pin between the jaws, for the banner of Stop. */
export const StopMark = () => (
  <svg width="68" height="62" viewBox="0 0 68 62" aria-hidden="true">
    <path d="M0 0h12l6 7v48l-6 7H0zM68 0H56l-6 7v48l6 7h12z" fill="currentColor" />
    <path
      fillRule="evenodd"
      d="M34 19c6 0 11 4 11 12s-5 12-11 12-11-4-11-12 5-12 11-12zM32.5 24v14h3V24z"
      fill="currentColor"
    />
  </svg>
);
