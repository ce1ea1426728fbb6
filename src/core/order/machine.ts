import type { MadeBlockAt } from '../parts/made-block.ts';

/** A number, or a short sum over the machine's dimensions: "centres/2 + 40". */
type Measure = number | string;

/** One number that the user measures on the machine; everything else may be a sum over such numbers. */
export interface MachineDimension {
  readonly key: string;
  readonly label: string;
  readonly unit: 'mm' | 'deg' | 'um' | 'kg';
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Where on the machine it is measured, in words. */
  readonly where: string;
}

/** A casting, or whatever else moves as one piece. */
export interface MachineBody {
  readonly id: string;
  readonly name: string;
  /** What must be known before it is lifted or turned. */
  readonly caution?: string;
}

/** A face, or a set of faces finished together. */
export interface MachineWay {
  readonly id: string;
  readonly body: string;
  readonly name: string;
  /** Why it may be trusted as it was found, when no step makes it true. */
  readonly as_found?: string;
}

/** A band in place of the template's, as in machines/*.json. */
export interface SlideTarget {
  readonly feature: string;
  readonly low_um: Measure;
  readonly high_um: Measure;
  readonly aim_um?: Measure;
  readonly over_mm?: number;
}

/** A body that rests on another: the slide template it is scraped with, and what differs from it on this machine. */
export interface MachineSlide {
  readonly id: string;
  readonly name: string;
  readonly moves: string;
  readonly on: string;
  /** A slide template of machines/*.json. */
  readonly template: string;
  /** The template's dimensions by key, as sums over the machine's; "surface" is a material. */
  readonly dimensions?: Readonly<Record<string, Measure>>;
  readonly targets?: readonly SlideTarget[];
  /** What the template's pads are called here, by the template's name. */
  readonly pads?: Readonly<Record<string, string>>;
  /** How this machine calls the ends and sides, and the two directions of a feature; left out: as the template. */
  readonly places?: Partial<Record<'minus_end' | 'plus_end' | 'minus_side' | 'plus_side', string>>;
  readonly words?: readonly {
    readonly feature: string;
    readonly minus: string;
    readonly plus: string;
    readonly minus_sentence: string;
    readonly plus_sentence: string;
  }[];
  /** What is made with it: as the template has it, or its own; left out: nothing is told of a block. */
  readonly makes?: 'as the template' | MadeBlockAt<readonly [Measure, Measure, Measure]>;
  /** What the template's set-up cards say otherwise here, by id. */
  readonly setups?: readonly {
    readonly id: string;
    readonly name?: string;
    readonly question?: string;
    readonly rides_words?: string;
    readonly touches_words?: string;
    readonly plus_words?: string;
    readonly caution?: string;
  }[];
}

/** What a step is made true from: a way of the machine, or a master from outside; and why that one. */
export type Basis =
  | { readonly way: string; readonly why: string }
  | { readonly master: string; readonly why: string };

/** How a step is shown to be right. */
export interface StepProof {
  readonly what: string;
  /** What it is measured with, and how. */
  readonly with: string;
  /** The acceptance test it answers, of the machine's list. */
  readonly test?: string;
}

/** What the bench of a step opens with. */
export interface StepBench {
  readonly slide: string;
  /** The template's set-ups by id; left out: all of them. */
  readonly setups?: readonly string[];
  /** The features that this step brings into their bands; left out: all of them. */
  readonly features?: readonly string[];
}

/** Screens where the numbers of a step are taken, beside its bench. */
export const stepScreens = ['survey', 'chart', 'heights', 'axis', 'gib', 'sum', 'kit'] as const;

/** A screen that a step opens, and what for. */
export interface StepPlace {
  readonly screen: (typeof stepScreens)[number];
  /** What is done there: "straight, up and sideways". */
  readonly what: string;
  /** Of a sum: which. */
  readonly sum?: string;
}

/** One step of a rebuild. */
export interface Step {
  readonly id: string;
  readonly title: string;
  /** Why it is done, and why here. */
  readonly reason: string;
  /** The ways that it makes true; no other step makes them. */
  readonly makes: readonly string[];
  /** What it is made and proven from. If that is scraped again, the step is to be re-proven. */
  readonly from: readonly Basis[];
  /** Steps that only come first; doing them again takes nothing back. */
  readonly after?: readonly { readonly step: string; readonly why: string }[];
  readonly bench?: StepBench;
  /** Where else its numbers are taken; the tests that its proofs answer stand on the chart anyhow. */
  readonly opens?: readonly StepPlace[];
  readonly proofs: readonly StepProof[];
  readonly cautions: readonly string[];
  /** Hours it usually takes; `again`: to prove it once more when nothing has to come off. */
  readonly hours: { readonly likely: number; readonly again?: number };
}

type MeasuredPlace = readonly [Measure, Measure, Measure];

/** The machine's heights as data: see core/heights. */
export interface MachineHeights {
  readonly places: readonly { readonly name: string; readonly body: string; readonly at_mm: MeasuredPlace }[];
  /** By slide: where its middle lies on the machine, and which way it travels. */
  readonly joints: readonly {
    readonly slide: string;
    readonly origin_mm: MeasuredPlace;
    readonly travel: 'x' | 'y';
  }[];
  readonly heights: readonly {
    readonly name: string;
    readonly from: string;
    readonly to: string;
    readonly low_um: number;
    readonly high_um: number;
    readonly aim_um: number;
    readonly why?: string;
    readonly rack_deg?: number;
  }[];
}

/** A whole machine as data. */
export interface Machine {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  /** Its list of acceptance tests, machines/tests/*.json. */
  readonly tests?: string;
  readonly dimensions: readonly MachineDimension[];
  readonly bodies: readonly MachineBody[];
  readonly ways: readonly MachineWay[];
  readonly slides: readonly MachineSlide[];
  readonly steps: readonly Step[];
  readonly heights?: MachineHeights;
}
