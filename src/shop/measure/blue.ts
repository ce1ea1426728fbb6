import type { Pad } from '../../core/body/pad.ts';
import type { BlueWord } from '../../core/ledger/entry.ts';

/**
 * The share of blue that a tapped word stands for, 0 to 1. Common practice, no source: burnished is rubbed through all over
 * (taken as nearly all of it, where the estimate reads "at least so far"), heavy is well covered, faint barely touches,
 * none is bare.
 */
export const shareOfWord: Readonly<Record<BlueWord, number>> = {
  burnished: 0.97,
  heavy: 0.7,
  faint: 0.25,
  none: 0,
};

export const blueWords: readonly BlueWord[] = ['burnished', 'heavy', 'faint', 'none'];

/** What the words mean, for the person who taps them. */
export const blueWordMeaning: Readonly<Record<BlueWord, string>> = {
  burnished: 'rubbed bright, highest',
  heavy: 'well covered, high',
  faint: 'barely touched',
  none: 'bare, low',
};

/** A zone's blue as entered: a word tapped, or a share typed (0 to 1). */
export type ZoneBlue = { readonly word: BlueWord } | { readonly share: number };

/** A print being entered: one place a zone by pad, undefined (null once it has been through JSON) where nothing was said yet. */
export type PrintDraft = Readonly<Record<string, readonly (ZoneBlue | null | undefined)[]>>;

export const withZone = (
  draft: PrintDraft,
  pads: readonly Pick<Pad, 'name' | 'zones'>[],
  place: { readonly pad: string; readonly zone: number },
  blue: ZoneBlue,
): PrintDraft =>
  Object.fromEntries(
    pads.map((pad) => [
      pad.name,
      Array.from({ length: pad.zones }, (_, z) =>
        pad.name === place.pad && z === place.zone ? blue : draft[pad.name]?.[z],
      ),
    ]),
  );

/** The next zone without an answer, going on from `place` and round to the beginning. */
export function nextOpen(
  draft: PrintDraft,
  pads: readonly Pick<Pad, 'name' | 'zones'>[],
  place: { readonly pad: string; readonly zone: number },
): { readonly pad: string; readonly zone: number } | undefined {
  const all = pads.flatMap((pad) =>
    Array.from({ length: pad.zones }, (_, zone) => ({ pad: pad.name, zone })),
  );
  const at = all.findIndex((one) => one.pad === place.pad && one.zone === place.zone);
  return [...all.slice(at + 1), ...all.slice(0, at + 1)].find((one) => !draft[one.pad]?.[one.zone]);
}

export const shareOf = (blue: ZoneBlue): number => ('word' in blue ? shareOfWord[blue.word] : blue.share);

/** How far a print is: zones left in pads that were begun, and what can be kept (whole pads only). */
export function printOf(
  draft: PrintDraft,
  pads: readonly Pick<Pad, 'name' | 'zones'>[],
): {
  readonly left: number;
  readonly share: Record<string, number[]>;
  readonly tapped: Record<string, BlueWord[]>;
} {
  const share: Record<string, number[]> = {};
  const tapped: Record<string, BlueWord[]> = {};
  let left = 0;
  for (const pad of pads) {
    const zones = Array.from({ length: pad.zones }, (_, z) => draft[pad.name]?.[z] ?? undefined);
    const said = zones.filter((zone): zone is ZoneBlue => zone !== undefined);
    if (said.length < pad.zones) {
      left += pad.zones - said.length;
      continue;
    }
    share[pad.name] = said.map(shareOf);
    if (said.every((blue) => 'word' in blue)) tapped[pad.name] = said.map((blue) => blue.word);
  }
  return { left, share, tapped };
}
