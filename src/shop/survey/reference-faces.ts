import { slope } from '../../core/body/displacement.ts';
import { length, subtract } from '../../core/body/vector.ts';
import { referenceSd_um } from '../../core/kit/doubt-of.ts';
import type { Kit, Reference } from '../../core/kit/kit.ts';
import { halves } from '../../core/kit/reversal.ts';
import type { Entry, JobPlan } from '../../core/ledger/entry.ts';
import type { SweepSetup } from '../../core/ledger/setup.ts';

/** A face that a job's sweeps are held against: how its own slope counts, and where. */
export interface ReferenceFace {
  readonly face: string;
  /** What of a kit it is, if it is. */
  readonly kind?: Reference['kind'];
  /** The thing of the kit it was said to be. */
  readonly thing?: string;
  /** Its own slope along the sweep as it is taken out, and one sd of what is left, µrad. */
  readonly slope_urad: number;
  readonly sd_urad: number;
  /** The cards that touch it. */
  readonly cards: readonly string[];
  /** The longest of their sweeps, mm. */
  readonly length_mm: number;
  /** Rounds in which it was swept turned over as well: its error is found by the sweeps themselves there. */
  readonly turnedIn: readonly number[];
}

const kinds: readonly Reference['kind'][] = ['square', 'test bar', 'straightedge', 'parallels', 'plate'];
const quoted = /\s*“([^”]*)”/;

const sweepsOn = (plan: JobPlan, face: string): SweepSetup[] =>
  plan.setups.filter((setup): setup is SweepSetup => setup.kind === 'sweep' && setup.face === face);

/** Every face that the job's cards touch, in the order of the cards. */
export function referenceFaces(plan: JobPlan, live: readonly Entry[]): readonly ReferenceFace[] {
  const faces = [...new Set(plan.setups.flatMap((setup) => (setup.kind === 'sweep' ? [setup.face] : [])))];
  return faces.map((face) => {
    const sweeps = sweepsOn(plan, face);
    const ids = sweeps.map(({ id }) => id);
    const kind = kinds.find((one) => new RegExp(`\\b${one}\\b`).test(face));
    const thing = quoted.exec(face)?.[1];
    const turned = live.flatMap((entry) =>
      entry.kind === 'sweep taken' && ids.includes(entry.setup) && entry.record.turned_over
        ? [entry.round]
        : [],
    );
    return {
      face,
      ...(kind ? { kind } : {}),
      ...(thing === undefined ? {} : { thing }),
      slope_urad: sweeps[0]!.face_slope_urad,
      sd_urad: Math.max(...sweeps.map((one) => one.face_slope_sd_urad)),
      cards: sweeps.map(({ name }) => name),
      length_mm: Math.max(...sweeps.map((one) => length(subtract(one.to_mm, one.from_mm)))),
      turnedIn: [...new Set(turned)],
    };
  });
}

/** Things of the kit that could be this face. */
export const referencesFor = (one: ReferenceFace, kit: Kit): readonly Reference[] =>
  one.kind ? kit.references.filter(({ kind }) => kind === one.kind) : [];

const changed = (plan: JobPlan, face: string, change: Partial<SweepSetup>): Pick<JobPlan, 'setups'> => ({
  setups: plan.setups.map((setup) =>
    setup.kind === 'sweep' && setup.face === face ? { ...setup, ...change } : setup,
  ),
});

/** Setting a reference down again, one sd, when nothing is said: common practice. */
const usualReseat_um = 1;

/**
 * The plan with a face that is this thing of the kit: what is not known of its slope is what its grade or certificate leaves, and
 * setting it down. Its slope counts as nothing until a sweep on both sides has found it.
 */
export function faceFromKit(plan: JobPlan, face: string, thing: Reference): Pick<JobPlan, 'setups'> {
  const sd_um = Math.hypot(referenceSd_um(thing), thing.reseat_um ?? usualReseat_um);
  return changed(plan, face, {
    face: `${face.replace(quoted, '')} “${thing.name}”`,
    face_slope_urad: 0,
    face_slope_sd_urad: slope(sd_um, thing.length_mm),
  });
}

/** A sweep's last reading less its first, as it stands and turned. */
export interface TwoSides {
  readonly first_um: number;
  readonly turned_um: number;
  readonly length_mm: number;
  /** One sd of either: reading, and setting it down. */
  readonly sd_um: number;
}

/** What two sides say, and the plan with the face's slope taken from them. */
export interface TwoSidesRead {
  readonly machine_um: number;
  readonly face_um: number;
  /** One sd of either. */
  readonly sd_um: number;
  readonly slope_urad: number;
  readonly slope_sd_urad: number;
  readonly change: Pick<JobPlan, 'setups'>;
}

/**
 * A face's own slope from a sweep on both its sides:
 *
 *     I₁ = M + S,   I₂ = M − S,   and a sweep reads M − face_slope · length, so   face_slope = −S / length
 *
 * Source: core/kit/reversal.ts for the halves, the contract for what a sweep reads.
 */
export function faceFromTwoSides(plan: JobPlan, face: string, two: TwoSides): TwoSidesRead {
  const { kept, turned } = halves(two.first_um, two.turned_um);
  const sd_um = two.sd_um / Math.SQRT2;
  const slope_urad = -slope(turned, two.length_mm) + 0;
  const slope_sd_urad = slope(sd_um, two.length_mm);
  return {
    machine_um: kept,
    face_um: turned,
    sd_um,
    slope_urad,
    slope_sd_urad,
    change: changed(plan, face, { face_slope_urad: slope_urad, face_slope_sd_urad: slope_sd_urad }),
  };
}
