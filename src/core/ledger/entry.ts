import type { HeldBar, TurnedBar } from '../axis/bar-axis.ts';
import type { Feature, Target } from '../body/feature.ts';
import type { Slide } from '../body/slide.ts';
import type { HingeTest } from '../kit/hinge.ts';
import type { RockTest } from '../kit/rock.ts';
import type { PassSize, SinkLimit } from '../observe/round.ts';
import type { Machine } from '../order/machine.ts';
import type { MadeBlock } from '../parts/made-block.ts';
import type { PracticeRecord } from '../practice/record.ts';
import type { Exclusion } from '../print/exclusion.ts';
import type { Corners, SurfaceSize } from '../print/picture.ts';
import type {
  AxisRecord,
  BenchLink,
  ChartRecord,
  HeightsRecord,
  ResultRecord,
  StepRecord,
} from './rebuild-record.ts';
import type { FeatureWords, PlaceWords, Setup } from './setup.ts';
import type { SurveyRecord } from './survey-record.ts';

/** What a job is about; made once from a template and the user's own dimensions, amended by later entries. */
export interface JobPlan {
  readonly title: string;
  readonly template: string;
  /** "Invented data" and the like, shown wherever the job is; absent for a user's own. */
  readonly demo?: string;
  readonly slide: Slide;
  readonly features: readonly Feature[];
  readonly targets: readonly Target[];
  readonly words: readonly FeatureWords[];
  readonly places: PlaceWords;
  readonly passes: Readonly<Record<string, PassSize>>;
  readonly sink?: readonly SinkLimit[];
  /** Thickness of the blue, µm. */
  readonly film_um?: number;
  readonly setups: readonly Setup[];
  /** What the machine makes, where it is a mill or grinder. */
  readonly makes?: MadeBlock;
  readonly cautions: readonly string[];
}

/** How the part was turned to lie on the bench with its underside up. */
export type TurnedOver = 'end over end' | 'front to back';

/** What a zone's blue looked like when tapped by thumb. */
export type BlueWord = 'burnished' | 'heavy' | 'faint' | 'none';

/** A reading as it was typed and as it was understood; a later reading of the same point replaces it in the fold, never in the ledger. */
export interface TypedReading {
  readonly typed: string;
  /** As shown by the instrument, in the unit of the kind: µm for sweeps and heights, µrad for levels; sign as read. */
  readonly value: number;
}

/** The state of the set-up when readings were taken. */
export interface SetupRecord {
  /** A finger pushed the plunger in: did the number climb or fall? With "fell" every sign is turned when the sum is made. */
  readonly push?: 'climbed' | 'fell';
  /** Swept from the side opposite to the card's: the plunger pointed the other way. */
  readonly other_side?: boolean;
  /** The reference was turned over for this sweep (reversal). */
  readonly turned_over?: boolean;
  readonly support?: string;
  readonly temperature_C?: number;
}

/** A test bar read at two places, each as it is and turned half round: µm as the indicator showed them, lengths from where it is held. */
export interface BarTaken {
  readonly held: HeldBar;
  readonly reading: TurnedBar;
}

/** What a photo of one pad's print was read as, with all that is needed to read it again. */
export interface PhotographedPrint {
  readonly pad: string;
  /** The photo: SHA-256 of its bytes, 64 hex figures. The bytes are kept beside the ledger, not in it. */
  readonly photo: string;
  readonly corners: Corners;
  readonly size: SurfaceSize;
  readonly exclusions?: readonly Exclusion[];
  /** Bearing share of each zone, 0 to 1; null where the photo cannot tell. */
  readonly shares: readonly (number | null)[];
  readonly density_per_25mm: number;
  readonly bearing_pct: number;
  /** How far the photo was trusted, 0 to 1. */
  readonly confidence: number;
  /** Codes of the warnings it came with. */
  readonly warnings: readonly string[];
}

/** What was done, by its kind; docs/job-file.md lists them. */
export type Deed =
  | { readonly kind: 'job made'; readonly plan: JobPlan }
  | { readonly kind: 'plan amended'; readonly change: Partial<JobPlan> }
  /** A whole sweep; `repeat` tells sweeps of the same set-up in the same round apart (re-seats). */
  | {
      readonly kind: 'sweep taken';
      readonly round: number;
      readonly setup: string;
      readonly repeat?: number;
      readonly record: SetupRecord;
      readonly readings: readonly TypedReading[];
    }
  | {
      readonly kind: 'level read';
      readonly round: number;
      readonly setup: string;
      readonly repeat?: number;
      readonly record: SetupRecord;
      readonly reading: TypedReading;
    }
  | {
      readonly kind: 'height read';
      readonly round: number;
      readonly setup: string;
      readonly repeat?: number;
      readonly record: SetupRecord;
      readonly reading: TypedReading;
    }
  /** A test bar in place of the sweep along it: turned half round, so that its own error drops out, and its sag known. */
  | ({
      readonly kind: 'bar read';
      readonly round: number;
      readonly setup: string;
      readonly repeat?: number;
    } & BarTaken)
  /** The whole print of a round, or some pads of it: bearing share by zone, and the words tapped where it was tapped. */
  | {
      readonly kind: 'print read';
      readonly round: number;
      readonly share: Readonly<Record<string, readonly number[]>>;
      readonly tapped?: Readonly<Record<string, readonly BlueWord[]>>;
    }
  /** One pad's print, read from a photo. */
  | ({ readonly kind: 'print photographed'; readonly round: number } & PhotographedPrint)
  | { readonly kind: 'part turned over'; readonly round: number; readonly how: TurnedOver }
  /** One pass ticked off: pass k of the round's plan, on these zones (1 made, 0 not). */
  | {
      readonly kind: 'pass made';
      readonly round: number;
      readonly pass: number;
      readonly spot?: boolean;
      readonly zones: Readonly<Record<string, readonly number[]>>;
    }
  /** The part is set back: what follows belongs to the next round. */
  | { readonly kind: 'round closed'; readonly round: number }
  /** The alarm's question was answered. */
  | {
      readonly kind: 'cause settled';
      readonly round: number;
      readonly cause: string;
      readonly answer: 'yes' | 'no' | 'cannot tell';
    }
  /** A way or a face as it was surveyed; a later survey of the same thing replaces it in the fold. */
  | ({ readonly kind: 'survey taken' } & SurveyRecord)
  /** Where the part turned on its master when one end was pushed: evidence of the round. */
  | { readonly kind: 'hinge tested'; readonly round: number; readonly test: HingeTest }
  /** How far the four corners moved as the part was tapped: evidence of the round. */
  | { readonly kind: 'rock tested'; readonly round: number; readonly test: RockTest }
  /** The job is of a practice machine: what it is made from. Stands second in its ledger. */
  | ({ readonly kind: 'practice begun' } & PracticeRecord)
  /** The practice machine's truth was asked for: from here on it may be shown. */
  | { readonly kind: 'truth shown'; readonly round: number }
  /** The whole machine that the job is about, or that machine as it was edited: the last one counts. */
  | { readonly kind: 'machine set'; readonly machine: Machine }
  /** A step of the machine: begun, done, proven once more, reopened, or hours only. */
  | ({ readonly kind: 'step told' } & StepRecord)
  /** A step's bench was opened as a job of its own. */
  | ({ readonly kind: 'bench opened' } & BenchLink)
  /** This job is the bench of a step of another job's machine. */
  | ({ readonly kind: 'bench of' } & BenchLink)
  /** What was found and is planned of the machine's heights; the last one counts. */
  | { readonly kind: 'heights set'; readonly heights: HeightsRecord }
  /** An axis as it was swept, or centres as they were compared, with what `axis` is asked; the last of each name counts. */
  | ({ readonly kind: 'axis taken' } & AxisRecord)
  /** A dovetail, its gib and keepers as they were read, with what `gib` is asked; the last of each name counts. */
  | ({ readonly kind: 'gib taken' } & AxisRecord)
  /** How the chart is put together: list, class, sizes, own tests, own limits, kit; the last one counts. */
  | { readonly kind: 'chart set'; readonly chart: ChartRecord }
  /** One result of a line of the chart; a later one of the same line and time counts. */
  | ({ readonly kind: 'result taken' } & ResultRecord)
  | { readonly kind: 'stop signed'; readonly round: number; readonly note?: string }
  | { readonly kind: 'note'; readonly round?: number; readonly text: string }
  /** Undo is an entry: the named entry no longer counts. Undoing an undo brings it back. */
  | { readonly kind: 'undone'; readonly entry: string };

/** A deed with its place in the ledger. `id` is made by whoever wrote it (UUID), so that sending it twice keeps it once. */
export type Entry = Deed & {
  readonly id: string;
  /** Time it was written, ISO 8601 with zone; told by the writer. */
  readonly at: string;
  /** Place in its job's ledger, from 1, given by the store. */
  readonly seq: number;
  readonly written?: Written;
};

/** Where an entry was written, so that two hands who did not know of each other are told. */
export interface Written {
  /** A random mark of the phone's browser; says nothing of whose it is. */
  readonly on: string;
  /** Place of the last entry that the writer had seen. */
  readonly knowing: number;
}
