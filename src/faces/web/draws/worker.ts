import '../older-browsers.ts';
import { sumAnswer } from '../../../shop/sums/sum-answer.ts';
import { along } from '../../../shop/survey/along.ts';
import { surveyDraws } from '../../../shop/survey/drawn-words.ts';
import { line } from '../../../shop/survey/line.ts';
import { plate } from '../../../shop/survey/plate.ts';
import type { DrawAsk, DrawTold } from './ask.ts';

/** The thread that draws readings anew, so that the page stays free. */
const scope = self as unknown as {
  onmessage: (event: { readonly data: DrawAsk }) => void;
  postMessage: (told: DrawTold) => void;
};

function drawn(ask: DrawAsk): unknown {
  switch (ask.what) {
    case 'line':
      return line(ask.input, undefined, surveyDraws.line);
    case 'along':
      return along(ask.input, surveyDraws.along);
    case 'plate':
      return plate(ask.input, undefined, surveyDraws.plate);
    case 'sum':
      return sumAnswer(ask.question, ask.system);
  }
}

scope.onmessage = ({ data }) => {
  try {
    scope.postMessage({ ok: true, answer: drawn(data) });
  } catch (failure) {
    scope.postMessage({ ok: false, why: failure instanceof Error ? failure.message : String(failure) });
  }
};
