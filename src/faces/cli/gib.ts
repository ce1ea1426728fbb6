import { gibInput } from '../../contract/gib.ts';
import { gib } from '../../shop/gib.ts';
import { registerSheet } from './sheet-verb.ts';

/** `waywright gib FILE`. */
export const registerGib = registerSheet({
  verb: 'gib',
  example: `
Example:
  waywright gib cross-slide.json            dovetail over rolls, taper, play at both ends, what to do, where to scrape
  waywright gib cross-slide.json --working  and every number with its formula
  waywright gib cross-slide.json --json     the same as one JSON document
The file's shape is in docs/contract.md.`,
  read: gibInput,
  answer: gib,
  sentences: (answer) =>
    [
      answer.rolls && `Rolls: ${answer.rolls.sentence}`,
      answer.angle_check && `Angle: ${answer.angle_check.sentence}`,
      answer.gib && `Gib: ${answer.gib.sentence}`,
      answer.space && `Space: ${answer.space.sentence}`,
      answer.play && `Play: ${answer.play.sentence}`,
      ...answer.keepers.map((one) => `Keeper, ${one.sentence}`),
    ].filter((one) => one !== undefined),
});
