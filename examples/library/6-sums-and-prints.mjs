// Sums and prints
import { readFileSync } from 'node:fs';
import { decodePhoto, listSums, printAsk, readPhoto, sumAnswer, sumQuestion } from 'waywright';

// listSums, sumQuestion, sumAnswer: a male dovetail over rolls
console.log(listSums().length > 10);
const over = sumAnswer(
  sumQuestion({ sum: 'dovetail-male', values: { root_mm: 40, roll_mm: 10, angle_deg: 60 } }),
);
console.log(over.results[0].value.toFixed(4));

// decodePhoto, printAsk, readPhoto: a photo of a blued print; this one has no print in it, and says so
const photo = readFileSync('docs/pictures/bench-phone.png');
try {
  await readPhoto(photo, printAsk({ size: '150x75' }), decodePhoto);
} catch (refused) {
  console.log(refused.issues[0].path, refused.issues[0].found);
}
