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

/** Two bars alike compared, then exchanged; tailstock less headstock. */
export interface CentresTyped {
  readonly kind: 'two bars';
  readonly plane: 'up' | 'sideways';
  readonly first_um: number;
  readonly exchanged_um: number;
  readonly low_um: number;
  readonly high_um: number;
  readonly aim_um: number;
}

/** `axis`' input as the screen writes it. */
export interface AxisTyped {
  readonly bar?: BarTyped;
  readonly readings?: readonly ReadingTyped[];
  readonly bands?: { readonly up?: BandTyped; readonly sideways?: BandTyped };
  readonly centres?: readonly CentresTyped[];
}
