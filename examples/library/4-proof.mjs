// Doubt and proof
import {
  canProve,
  gradeLimit,
  judge,
  kitQuestion,
  kitReport,
  monteCarlo,
  propagate,
  readHinge,
  readRock,
  verdict,
} from 'waywright';

// verdict, judge: within only when the value and its whole doubt lie inside
console.log(verdict(15, 2, 0, 20).verdict, judge(17, 4, 0, 20).verdict, judge(25, 4, 0, 20).verdict);

// propagate: a formula's value and sd, inputs independent
const made = propagate(([length, slope]) => length * slope, [300, 0.05], [1, 0.004]);
console.log(made.value, made.sd.toFixed(4));

// monteCarlo: the same by drawing, without straightening the formula
const drawn = monteCarlo(
  ([a, b]) => a * b,
  [
    { kind: 'normal', value: 300, sd: 1 },
    { kind: 'rectangular', value: 0.05, half: 0.007 },
  ],
  { seed: 1, trials: 20_000 },
);
console.log(drawn.mean.toFixed(2), drawn.sd.toFixed(2));

// gradeLimit: what a published grade allows, and how that came to us
const plate = gradeLimit('DIN 876', '0', 1000, 630);
console.log(plate.limit_um, plate.came);

// kitQuestion, canProve, kitReport: whether what is at hand can prove a facing of 6 to 20 µm in 300 mm
const question = kitQuestion({
  instruments: [{ kind: 'indicator', name: 'lever', graduation_um: 2, repeatability_um: 0.7 }],
  references: [
    {
      kind: 'square',
      name: 'square',
      length_mm: 300,
      known: { by: 'grade', standard: 'DIN 875', grade: '0' },
    },
  ],
  targets: [{ name: 'facing', low_um: 6, high_um: 20, over_mm: 300 }],
  setups: [
    {
      method: 'square sweep',
      name: 'on the cross ways',
      target: 'facing',
      instrument: 'lever',
      reference: 'square',
      length_mm: 250,
      points: 11,
    },
  ],
});
const [proof] = kitReport(question).proofs;
console.log(proof.ratio.toFixed(2), 'to 1, limited by the', proof.limited_by);
console.log(canProve(question.targets[0], question.setups[0].setup, question.kit).ratio === proof.ratio);

// readHinge: where a pushed part turns says where it bears
console.log(readHinge({ pushed_first: 0.3, pushed_last: 0.29 }).bearing);

// readRock: what a rock from corner to corner says of twist
console.log(
  readRock({ moved_um: [0.4, 11, -0.2, 11.6], sd_um: 0.5, length_mm: 1000, width_mm: 200 }).gap_um.toFixed(1),
);
