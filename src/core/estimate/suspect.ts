import { faceOf } from '../observe/sweep.ts';
import type { Cause } from './cause.ts';
import { shiftFit } from './evidence.ts';
import type { Known, Otherwise } from './filter.ts';
import { type History, madeBefore, type Reversals, takeRound } from './history.ts';
import type { SlideModel } from './model.ts';
import type { Made } from './scraping.ts';

/** A cause that could be tried: how rare it is, how much it could explain at a guess, and the trial itself. */
export interface Suspect {
  readonly cause: Cause;
  /** The round whose readings it is about, or that followed the scraping it is about. */
  readonly round: number;
  /** ln of how often it happens in a round, shared among the places it could be in. */
  readonly logPrior: number;
  /** At a guess, how much likelier (ln) it makes the round. */
  readonly guess: number;
  readonly tried: () => Trial;
}

/** A cause tried in full. */
export interface Trial {
  /** How much likelier (ln) all rounds that it touches came out than as recorded. */
  readonly logRatio: number;
  readonly known: Known;
  /** Sweeps turned back, by round, if the cause is one of those. */
  readonly reversed?: Reversals;
}

/** How often each mistake is made, by round: common practice has no figures; these are guesses, and only their logarithm counts. */
const rarity = {
  'sweep reversed': 0.04,
  'reference moved': 0.02,
  'zone missed': 0.02,
  'pass too many': 0.02,
  'flanks swapped': 0.004,
  'map end for end': 0.004,
  'not as recorded': 0.005,
};
/** A reference that moved may have by this, µrad. */
const moved_urad = 40;
/**
 * A plunger that faced the other way in every round so far is found in the first few. Later on a mirrored past would have to
 * be held against all rounds, and a removal near none can make almost any past fit.
 */
const everyWithin = 3;
/** "Otherwise than ticked off": scatter this many times as wide. */
const wider = 3;

/** All causes that could be behind round k, the record of round k being taken as `recorded`. */
export function suspectsOf(history: History, k: number, recorded: Known): Suspect[] {
  return [
    ...reversedSweeps(history, k, recorded),
    ...movedReferences(history, k, recorded),
    ...otherScraping(history, k, recorded),
  ];
}

function reversedSweeps(history: History, k: number, recorded: Known): Suspect[] {
  const names = [...new Set(history.input.rounds[k]!.sweeps.map((sweep) => sweep.name))];
  // Turning a sign can explain at most what the readings are astray by.
  const guess = recorded.evidence.readings.square / 2;
  return names.flatMap((sweep) => {
    const others = (rounds: readonly number[]): boolean =>
      rounds.every((r) => history.input.rounds[r]!.sweeps.some((one) => one.name === sweep));
    const every = Array.from({ length: k + 1 }, (_, r) => r).filter((r) => others([r]));
    const sets: number[][] = [[k]];
    if (others([k - 1])) sets.push([k - 1]);
    if (every.length > 1 && k < everyWithin) sets.push(every);
    return sets.map((rounds): Suspect => {
      const cause: Cause = { kind: 'sweep reversed', sweep };
      return {
        cause: rounds.length === 1 && rounds[0] === k ? cause : { ...cause, rounds },
        round: rounds.at(-1)!,
        logPrior: Math.log(rarity['sweep reversed'] / names.length / sets.length),
        guess,
        tried: () => reversedTrial(history, k, recorded, sweep, rounds),
      };
    });
  });
}

/** Takes all rounds from the first that was read backwards again, with its sign turned. */
function reversedTrial(
  history: History,
  k: number,
  recorded: Known,
  sweep: string,
  rounds: readonly number[],
): Trial {
  const reversed = new Map(
    rounds.map((r) => {
      const turned = new Set(history.reversed[r]);
      if (!turned.delete(sweep)) turned.add(sweep);
      return [r, turned];
    }),
  );
  let known: Known | undefined = history.known[rounds[0]! - 1];
  let logRatio = 0;
  for (let r = rounds[0]!; r <= k; r++) {
    const scale = history.known[r - 1]?.state;
    known = takeRound(history, r, known, reversed.get(r), scale ? { scale } : {});
    const asRecorded = r === k ? recorded : history.known[r]!;
    logRatio += known.evidence.logLikelihood - asRecorded.evidence.logLikelihood;
  }
  return { logRatio, known: known!, reversed };
}

const trial = (history: History, k: number, recorded: Known, otherwise: Otherwise): Trial => {
  const before = history.known[k - 1]!;
  const known = takeRound(history, k, before, history.reversed[k], { scale: before.state, ...otherwise });
  return { logRatio: known.evidence.logLikelihood - recorded.evidence.logLikelihood, known };
};

function movedReferences(history: History, k: number, recorded: Known): Suspect[] {
  const { layout } = history.model;
  const touched = (r: number) => history.input.rounds[r]!.sweeps.map(faceOf);
  // A face seen for the first time cannot have moved since.
  const earlier = new Set(Array.from({ length: k }, (_, r) => touched(r)).flat());
  const faces = [...new Set(touched(k))].filter((face) => earlier.has(face));
  return faces.map((face): Suspect => {
    const index = layout.faces.indexOf(face);
    const shift = new Float64Array(layout.size);
    shift[layout.face(index)] = 1;
    return {
      cause: { kind: 'reference moved', face },
      round: k,
      logPrior: Math.log(rarity['reference moved'] / faces.length),
      guess: shiftFit(recorded.evidence, shift).atBest,
      tried: () => trial(history, k, recorded, { faceMoved: { face: index, sd_urad: moved_urad } }),
    };
  });
}

function otherScraping(history: History, k: number, recorded: Known): Suspect[] {
  const { model } = history;
  const made = madeBefore(history, k);
  if (!made || made.count.every((m) => m === 0)) return [];
  const state = history.known[k - 1]!.state;
  const removal = (z: number): number => {
    const material = model.materialOf[z]!;
    return state.mean[made.spot ? model.layout.spot(material) : model.layout.whole(material)]!;
  };
  const suspect = (cause: Cause, prior: number, count: readonly number[]): Suspect => {
    const shift = new Float64Array(model.layout.size);
    count.forEach((m, z) => {
      shift[z] = (m - made.count[z]!) * removal(z);
    });
    return {
      cause,
      round: k,
      logPrior: Math.log(prior),
      guess: shiftFit(recorded.evidence, shift).asGiven,
      tried: () => trial(history, k, recorded, { made: { ...made, count } }),
    };
  };
  return [
    ...places(model, made, history.known[k - 1]!.shares, suspect),
    {
      cause: { kind: 'not as recorded' },
      round: k,
      logPrior: Math.log(rarity['not as recorded']),
      guess:
        (recorded.evidence.print.square + recorded.evidence.readings.square) / 2 -
        recorded.evidence.print.degrees / 2,
      tried: () => trial(history, k, recorded, { made: { ...made, wider } }),
    },
  ];
}

/** Zones missed, pads gone over once more, flanks swapped, the map read end for end. */
function places(
  model: SlideModel,
  made: Made,
  shares: readonly number[],
  suspect: (cause: Cause, prior: number, count: readonly number[]) => Suspect,
): Suspect[] {
  const { zones, slide } = model;
  const found: Suspect[] = [];
  const worked = made.count.filter((m) => m > 0).length;
  made.count.forEach((m, z) => {
    if (m === 0) return;
    const { pad, index } = zones[z]!;
    found.push(
      suspect(
        { kind: 'zone missed', pad: pad.name, zone: index },
        rarity['zone missed'] / worked,
        made.count.map((n, y) => (y === z ? 0 : n)),
      ),
    );
  });
  slide.pads.forEach((pad, p) => {
    found.push(
      suspect(
        { kind: 'pass too many', pad: pad.name },
        rarity['pass too many'] / slide.pads.length,
        made.count.map((n, z) => (zones[z]!.padIndex === p ? n + (made.spot ? shares[z]! : 1) : n)),
      ),
    );
  });
  const rowOf = (p: number) => made.count.filter((_, z) => zones[z]!.padIndex === p);
  const rows = slide.pads.map((_, p) => rowOf(p));
  const laid = (of: (p: number) => readonly number[]) => slide.pads.flatMap((_, p) => of(p));
  const differs = (count: readonly number[]) =>
    count.some((m, z) => Math.abs(m - made.count[z]!) > 0.5 * (made.spot ? 0.5 : 1));
  slide.pads.forEach((a, p) => {
    slide.pads.forEach((b, o) => {
      if (o <= p || a.zones !== b.zones || a.material !== b.material) return;
      const count = laid((i) => rows[i === p ? o : i === o ? p : i]!);
      if (differs(count))
        found.push(
          suspect({ kind: 'flanks swapped', pads: [a.name, b.name] }, rarity['flanks swapped'], count),
        );
    });
  });
  const mirrored = laid((p) => rows[p]!.toReversed());
  if (differs(mirrored))
    found.push(suspect({ kind: 'map end for end' }, rarity['map end for end'], mirrored));
  return found;
}
