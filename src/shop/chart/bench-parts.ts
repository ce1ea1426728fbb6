import type { Job } from '../../core/ledger/job.ts';
import { surveysOf } from '../../core/ledger/survey-record.ts';
import { trueSpindle } from '../../core/parts/spindle.ts';
import type { FeatureAnswer } from '../../core/plan/answer.ts';
import { sayLength } from '../../core/quantity/length.ts';
import { clean, size_um, type UnitSystem } from '../../core/quantity/unit.ts';
import type { JobAnswer } from '../answer-job.ts';
import { blockFrom, travelOfBlock } from '../parts/block-parts.ts';
import { blockLines, blockSentence, faceName } from '../parts/block-words.ts';
import { heightDoubt } from '../parts/height-doubt.ts';
import { faceFrom, facingOf } from '../parts/lathe-parts.ts';
import { facesSentence } from '../parts/part-sentence.ts';
import { capital, phraseText } from '../phrase.ts';
import { bedForm } from '../survey/bed-form.ts';

/** A profile or a face as it is drawn: places in mm or in, heights in µm or thou. */
export type PartDrawn =
  | {
      readonly kind: 'profile';
      readonly title: string;
      readonly places: readonly number[];
      readonly value: readonly number[];
      /** Two sd. */
      readonly doubt: readonly number[];
      /** As planned, when there is scraping left. */
      readonly planned?: readonly number[];
      readonly x: { readonly name: string; readonly left: string; readonly right: string };
      readonly y_name: string;
    }
  | {
      readonly kind: 'face';
      readonly title: string;
      readonly places_mm: readonly [readonly number[], readonly number[]];
      readonly out_um: readonly (readonly number[])[];
      readonly ends: readonly [string, string];
    };

/** Parts that a bench's machine will make, as the last round found it. */
export interface PartsTold {
  readonly texts: readonly string[];
  readonly drawn: readonly PartDrawn[];
}

/** A face of this radius stands for what is turned, mm: a middling part on a mid-size lathe, shop's own. */
const usualRim_mm = 100;

/** What faces or blocks come out as, from what is known of the slide; undefined where the machine's file tells of none. */
export function partsTold(job: Job, answer: JobAnswer, system: UnitSystem): PartsTold | undefined {
  const steer = answer.steer?.ok ? answer.steer : undefined;
  if (!steer) return undefined;
  const { features } = steer.estimate;
  const planned = steer.plan.action === 'stop' ? undefined : steer.plan.predicted;
  return facesTold(job, features, planned, system) ?? blockTold(job, features, planned, system);
}

type Known = readonly FeatureAnswer[];

function facesTold(
  job: Job,
  features: Known,
  planned: Known | undefined,
  system: UnitSystem,
): PartsTold | undefined {
  const facing = facingOf(job.plan);
  const now = features.find((one) => one.name === facing);
  if (!now) return undefined;
  const face = ({ value, sd }: FeatureAnswer) => faceFrom({ value, sd }, trueSpindle, usualRim_mm);
  const plan = planned?.find((one) => one.name === facing);
  const made = face(now);
  const then = plan && face(plan);
  // A thou to an inch is as a µm to a mm: one factor serves both.
  const factor = system === 'metric' ? 1 : 1 / (size_um.in / size_um.mm);
  const scaled = (values: readonly number[], times = 1): number[] =>
    values.map((one) => clean(one * times * factor) + 0);
  return {
    texts: [
      phraseText(facesSentence(made, then, usualRim_mm, system)),
      'The spindle is taken as true to the bed. An indicator swept past the centre shows twice the figure.',
    ],
    drawn: [
      {
        kind: 'profile',
        title: 'A face from rim to centre',
        places: scaled(made.radius_mm),
        // Drawn as it lies: a hollow goes down.
        value: scaled(made.depth_um, -1),
        doubt: scaled(made.depth_sd_um, 2),
        ...(then ? { planned: scaled(then.depth_um, -1) } : {}),
        x: { name: 'radius', left: `rim, ${sayLength(usualRim_mm, system).text}`, right: 'centre' },
        y_name: `face against its rim, plus: proud, ${system === 'metric' ? 'µm' : 'thou'}`,
      },
    ],
  };
}

function blockTold(
  job: Job,
  features: Known,
  planned: Known | undefined,
  system: UnitSystem,
): PartsTold | undefined {
  const { plan } = job;
  const { makes } = plan;
  if (!makes) return undefined;
  const surveys = surveysOf(job.live);
  const form = surveys.size ? bedForm(plan, surveys) : undefined;
  const length_mm = makes.size_mm['xyz'.indexOf(plan.slide.free)]!;
  const travel = form?.ok
    ? travelOfBlock(plan, form.bed, length_mm, heightDoubt(surveys.values()))
    : undefined;
  const made = blockFrom(plan, makes, makes.size_mm, features, travel);
  const then = planned && blockFrom(plan, makes, makes.size_mm, planned, travel);
  const others = makes.carriages.filter((one) => !one.is_slide).map(({ name }) => name);
  const sizes = makes.size_mm.map((mm) => sayLength(mm, system).text).join(' × ');
  return {
    texts: [
      `A block of ${sizes}, cut all over in one setting. ${phraseText(blockSentence(makes, made, system))}`,
      ...(then ? [`As planned: ${phraseText(blockSentence(makes, then, system))}`] : []),
      `${blockLines(makes, made, system)
        .map((line) => `${capital(line.name)}: ${line.said}${line.word ? `, ${line.word}` : ''}`)
        .join('. ')}.`,
      `Only how the ${plan.slide.name} stands${travel ? ' and the surveyed ways under it are' : ' is'} in this: the ${others.join(' and the ')} are taken as true, and the cutter as a point.`,
    ],
    drawn: made.faces.slice(0, 2).map((face) => ({
      kind: 'face',
      title: `${capital(faceName(makes, face.face))} against a true one`,
      places_mm: face.places_mm,
      out_um: face.out_um,
      ends: [`toward ${makes.plus[face.axes[0]]}`, `toward ${makes.plus[face.axes[1]]}`],
    })),
  };
}
