import type { LaidEdge } from '../kit/edge-bend.ts';

/** What every survey of a line may say. */
interface LineCommon {
  /** What it is of: "front V, top". */
  readonly name?: string;
  /** Vertical (plus: up) or horizontal (plus: toward the back, +y). Left out: vertical. */
  readonly direction?: 'vertical' | 'horizontal';
  /** Stretches that have not been run on, mm from … to …: wear is counted from the line through these. */
  readonly unworn_mm?: readonly (readonly [number, number])[];
  /** Most that the straightness may be, µm. */
  readonly limit_um?: number;
  /** One sd of the instrument's graduation, as a share of what it reads (0.02: 2 %). */
  readonly scale_sd?: number;
}

/** Level, electronic level or autocollimator's mirror, stepped foot to foot. */
export interface AnglesLine extends LineCommon {
  readonly kind: 'angles';
  readonly step_mm: number;
  /** One a step, in order along the way; plus: the end ahead is high. */
  readonly angles_urad: readonly number[];
  /** The run back, in the order it was taken (the last step first), with the same signs. */
  readonly return_urad?: readonly number[];
  readonly reading_sd_urad?: number;
  /** Setting the foot down again. */
  readonly repeatability_sd_urad?: number;
}

/** Heights at stations: an indicator along a straightedge, a taut wire, a laser. */
export interface HeightsLine extends LineCommon {
  readonly kind: 'heights';
  readonly stations_mm: readonly number[];
  readonly heights_um: readonly number[];
  /** What a plus reading means: the way stands proud (left out), or lies hollow. */
  readonly plus?: 'proud' | 'hollow';
  /** The run back, in the order it was taken. */
  readonly return_um?: readonly number[];
  /** A second run in the order of `stations_mm`, the straightedge turned about its long axis: its form reads with the other sign. */
  readonly reversed_um?: readonly number[];
  readonly reading_sd_um?: number;
  readonly repeatability_sd_um?: number;
  /** The reference's own departure from straight, rms over its length; a reversed run takes it out. */
  readonly reference_sd_um?: number;
  /** The straightedge as it lay: its sag and bow at the stations are added to what was read. */
  readonly straightedge?: LaidEdge;
}

/** A way as it was surveyed; see docs/contract.md, `line`. */
export type LineInput = AnglesLine | HeightsLine;
