import type { JobPlan } from '../../core/ledger/entry.ts';
import type { FeatureWords, LevelSetup, PlaceWords, SweepSetup } from '../../core/ledger/setup.ts';
import { type PracticeRecord, practiceTask } from '../../core/practice/record.ts';

/** What lies on the bench, by practice slide: the word that its sentences use. */
const parts: Readonly<Record<string, string>> = {
  'V and flat': 'saddle',
  'double V': 'table',
  'two flats and a dovetail flank': 'slide',
  'four-pad base': 'base',
};

const places: PlaceWords = {
  minus_end: 'headstock end',
  plus_end: 'tailstock end',
  minus_side: "operator's side",
  plus_side: 'back of the machine',
  travel: 'x',
};

const wordsOf = (part: string): FeatureWords[] => [
  {
    feature: 'facing',
    span_mm: 300,
    minus: 'convex',
    plus: 'concave',
    minus_sentence: 'At the back the cross ways lean to the tailstock.',
    plus_sentence: 'At the back the cross ways lean to the headstock.',
  },
  {
    feature: 'level across',
    span_mm: 300,
    minus: 'back low',
    plus: 'back high',
    minus_sentence: `The ${part} falls toward the back.`,
    plus_sentence: `The ${part} rises toward the back.`,
  },
  {
    feature: 'level along',
    span_mm: 300,
    minus: 'headstock low',
    plus: 'headstock high',
    minus_sentence: `The ${part}’s headstock end is low.`,
    plus_sentence: `The ${part}’s headstock end is high.`,
  },
];

/** Set-ups of the practice slides in the order the machine reads them: its sweeps, then its levels. */
export const practiceSetups = { sweeps: ['square'], levels: ['level_across', 'level_along'] } as const;

/** The plan of a practice machine: the slide it is made of, its set-ups in words, and what is asked of it. @throws RangeError */
export function practicePlan(record: PracticeRecord, title: string): JobPlan {
  const task = practiceTask(record);
  const part = parts[record.slide] ?? 'slide';
  const sweep = task.sweeps[0]!;
  const square: SweepSetup = {
    kind: 'sweep',
    id: practiceSetups.sweeps[0],
    name: sweep.name,
    question: 'Are the cross ways square to the bed?',
    drawing: 'square-cross-sweep',
    tells: ['facing'],
    rides_words: 'on the cross slide. It goes where the cross ways take it.',
    touches_words: 'the square, on its tailstock face. The square is set true to the bed and stays put.',
    plus_words: 'plunger in. It points at the headstock.',
    climbs_words: 'concave',
    falls_words: 'convex',
    rides: sweep.rides,
    touches: sweep.touches,
    plunger: sweep.plunger,
    from_mm: sweep.points_mm[0]!,
    to_mm: sweep.points_mm.at(-1)!,
    points: sweep.points_mm.length,
    reading_sd_um: sweep.reading_sd_um,
    face: sweep.face ?? sweep.name,
    face_slope_urad: sweep.face_slope_urad,
    face_slope_sd_urad: sweep.face_slope_sd_urad,
  };
  const [across, along] = task.levels;
  const levels: LevelSetup[] = [
    {
      kind: 'level',
      id: practiceSetups.levels[0],
      name: across!.name,
      question: `Does the ${part} lie level from you to the back?`,
      drawing: 'level-across',
      tells: ['level across'],
      rides_words: 'on the cross ways, pointing to the back.',
      touches_words: `the ${part} only. What the bed reads is taken off already.`,
      plus_words: 'the back end is high.',
      climbs_words: 'back high',
      falls_words: 'back low',
      along: across!.along,
      sd_urad: across!.sd_urad,
    },
    {
      kind: 'level',
      id: practiceSetups.levels[1],
      name: along!.name,
      question: `Does the ${part} lie level along the bed?`,
      drawing: 'level-along',
      tells: ['level along'],
      rides_words: `on the ${part} along the bed, pointing to the tailstock.`,
      touches_words: `the ${part} only. What the bed reads is taken off already.`,
      plus_words: 'the tailstock end is high.',
      climbs_words: 'headstock low',
      falls_words: 'headstock high',
      along: along!.along,
      sd_urad: along!.sd_urad,
    },
  ];
  return {
    title,
    template: 'practice',
    slide: { ...task.slide, name: part },
    features: task.features,
    targets: task.targets,
    words: wordsOf(part),
    places,
    passes: task.passes,
    film_um: task.film_um,
    setups: [square, ...levels],
    cautions: [
      'A practice machine is simulated: nothing is lifted and nothing is cut. On metal the cautions of a real job hold.',
    ],
  };
}
