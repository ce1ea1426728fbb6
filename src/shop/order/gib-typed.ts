/** Readings along a slide: where, and what was read there. */
export interface Station {
  readonly at_mm: number;
  readonly read: number;
}

/** A dovetail over rolls as the screen writes it. */
export interface RollsTyped {
  readonly kind: 'male' | 'female';
  readonly roll_mm: number;
  readonly stations_mm: readonly number[];
  readonly read_mm: readonly number[];
}

/** A gib's thickness along it, from the thin end. */
export interface WedgeTyped {
  readonly stations_mm: readonly number[];
  readonly thick_mm: readonly number[];
}

/** Play felt at both ends of a gib. */
export interface PlayTyped {
  readonly how: 'square' | 'across' | 'lift';
  readonly thick_end_um: number;
  readonly thin_end_um: number;
  readonly scrape_um?: number;
  readonly in_left_mm?: number;
  readonly out_left_mm?: number;
  readonly screw_mm?: number;
}

/** A keeper's clearance along its way. */
export interface KeeperTyped {
  readonly name: string;
  readonly stations_mm: readonly number[];
  readonly clearance_um: readonly number[];
}

/** `gib`'s input as the screen writes it. */
export interface GibTyped {
  readonly angle_deg?: number;
  readonly rolls?: RollsTyped;
  readonly gib?: WedgeTyped;
  readonly taper_one_in?: number;
  readonly play?: PlayTyped;
  readonly keepers?: readonly KeeperTyped[];
}

/** What each part of the sheet begins with: two ends of a slide of usual size, nothing out. */
export const gibBlanks = {
  rolls: { kind: 'male', roll_mm: 10, stations_mm: [0, 150, 300], read_mm: [100, 100, 100] },
  gib: { stations_mm: [0, 300], thick_mm: [8, 13] },
  play: { how: 'across', thick_end_um: 20, thin_end_um: 20 },
  keeper: { name: 'keeper', stations_mm: [0, 200, 400], clearance_um: [20, 20, 20] },
} as const satisfies {
  rolls: RollsTyped;
  gib: WedgeTyped;
  play: PlayTyped;
  keeper: KeeperTyped;
};

/** Two lists of one length as stations, and back. */
export const stationsOf = (at_mm: readonly number[], read: readonly number[]): readonly Station[] =>
  at_mm.map((at, k) => ({ at_mm: at, read: read[k] ?? 0 }));
export const placesOf = (stations: readonly Station[]): number[] => stations.map((one) => one.at_mm);
export const readsOf = (stations: readonly Station[]): number[] => stations.map((one) => one.read);

/** One more station, as far on as the last two lie apart, reading as the last. */
export function nextStation(stations: readonly Station[]): Station {
  const [before, last] = [stations.at(-2), stations.at(-1)];
  if (!last) return { at_mm: 0, read: 0 };
  return { at_mm: last.at_mm + (before ? last.at_mm - before.at_mm : 100), read: last.read };
}
