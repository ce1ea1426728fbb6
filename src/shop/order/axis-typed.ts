/** A bar as `axis` is asked of it, lengths from where it is held. */
export interface BarTyped {
  readonly diameter_mm: number;
  readonly bore_mm?: number;
  readonly out_mm: number;
  readonly near_mm: number;
  readonly far_mm: number;
  readonly reading_sd_um?: number;
}

/** A bar read along one line, µm: as the spindle is, and turned half round. */
export interface ReadingTyped {
  readonly side: 'top' | 'bottom' | 'front' | 'back';
  readonly near: readonly [number, number];
  readonly far: readonly [number, number];
}

interface BandTyped {
  readonly low_um: number;
  readonly high_um: number;
  readonly over_mm: number;
}

interface CentresBand {
  readonly plane: 'up' | 'sideways';
  readonly first_um: number;
  readonly low_um: number;
  readonly high_um: number;
  readonly aim_um: number;
}

/** Two bars alike compared, then exchanged, tailstock less headstock; or an indicator in the spindle swung round the barrel. */
export type CentresTyped = CentresBand &
  (
    | { readonly kind: 'two bars'; readonly exchanged_um: number }
    | {
        readonly kind: 'swung indicator';
        readonly opposite_um: number;
        /** Top less underside on something true; up and down only. */
        readonly bracket_sag_um?: number;
      }
  );

/** The same comparison made another way, or in the other plane: its readings begin anew, its band stays. */
export function centresBy(
  one: CentresTyped,
  kind: CentresTyped['kind'],
  plane: CentresTyped['plane'],
): CentresTyped {
  const { low_um, high_um, aim_um } = one;
  const same = kind === one.kind;
  const common = { plane, first_um: same ? one.first_um : 0, low_um, high_um, aim_um };
  if (kind === 'two bars') return { kind, ...common, exchanged_um: one.kind === kind ? one.exchanged_um : 0 };
  const was = one.kind === kind ? one : undefined;
  const sag = plane === 'up' ? { bracket_sag_um: was?.bracket_sag_um ?? 0 } : {};
  return { kind, ...common, opposite_um: was?.opposite_um ?? 0, ...sag };
}

/** `axis`' input as the screen writes it. */
export interface AxisTyped {
  readonly bar?: BarTyped;
  readonly readings?: readonly ReadingTyped[];
  readonly bands?: { readonly up?: BandTyped; readonly sideways?: BandTyped };
  readonly centres?: readonly CentresTyped[];
}
