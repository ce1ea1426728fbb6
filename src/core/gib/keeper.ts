import { type Judged, verdict } from '../prove/verdict.ts';

/** Clearance of a keeper under its way, at places along the travel. */
export interface KeeperRead {
  readonly name: string;
  readonly stations_mm: readonly number[];
  readonly clearance_um: readonly number[];
  /** One sd of a reading. */
  readonly reading_sd_um: number;
  readonly low_um: number;
  readonly high_um: number;
  /** What the tightest place is to have. */
  readonly aim_um: number;
}

/** A keeper as it fits. */
export interface KeeperFound {
  readonly name: string;
  readonly tightest_um: number;
  readonly tightest_at_mm: number;
  readonly widest_um: number;
  /** Widest less tightest, and what it may be: half the clearance aimed at. */
  readonly varies_um: number;
  readonly may_vary_um: number;
  readonly sd_um: number;
  readonly judged: Judged;
  /**
   * `way first`: the way's underside is not parallel to its top: take it down where the keeper is tight; `close`: metal off the
   * keeper's step, or off the shim behind it; `open`: shim behind it, or its face scraped.
   */
  readonly deed: 'leave' | 'measure again' | 'way first' | 'close' | 'open';
  readonly by_um: number;
}

/**
 * The tightest place rules: a keeper that fits there never binds.
 * Source: common practice (clearance 10 to 40 µm; a way's thickness may vary by half the clearance).
 */
export function keeperFound(read: KeeperRead): KeeperFound {
  const { clearance_um, stations_mm, reading_sd_um: sd_um, low_um, high_um, aim_um } = read;
  const tightest_um = Math.min(...clearance_um);
  const widest_um = Math.max(...clearance_um);
  const varies_um = widest_um - tightest_um;
  const may_vary_um = aim_um / 2;
  const judged = verdict(tightest_um, sd_um, low_um, high_um);
  const wavy = varies_um - 2 * Math.SQRT2 * sd_um > may_vary_um;
  const deed = wavy
    ? 'way first'
    : judged.verdict === 'within'
      ? 'leave'
      : judged.verdict === 'not proven'
        ? 'measure again'
        : judged.side === 'high'
          ? 'close'
          : 'open';
  const by_um = { leave: 0, 'measure again': 0, 'way first': varies_um, close: 0, open: 0 }[deed];
  return {
    name: read.name,
    tightest_um,
    tightest_at_mm: stations_mm[clearance_um.indexOf(tightest_um)]!,
    widest_um,
    varies_um,
    may_vary_um,
    sd_um,
    judged,
    deed,
    by_um: deed === 'close' || deed === 'open' ? Math.abs(tightest_um - aim_um) : by_um,
  };
}
