import type { BearingVerdict } from '../../../core/plan/answer.ts';
import { percent } from '../../../shop/phrase.ts';

const words = { proven: 'within', 'not proven': 'not proven', 'not printed': 'not printed' } as const;

const Word = ({ bearing }: { readonly bearing: BearingVerdict }) => (
  <span className={bearing.verdict === 'proven' ? 'verdict within' : 'verdict not-proven'}>
    {words[bearing.verdict]}
  </span>
);

/** The bearing as a row beside the features: a verdict of its own, never mixed with the alignment's. */
export const BearingLine = ({ bearing }: { readonly bearing: BearingVerdict }) => (
  <div className="feature">
    <span>
      Bearing {bearing.share === undefined ? null : <span className="num">{percent(bearing.share)}</span>}
      {bearing.least_zone === undefined ? null : (
        <span className="unit"> thinnest zone {percent(bearing.least_zone)}</span>
      )}
    </span>
    <span />
    <span className="judged">
      <Word bearing={bearing} />
    </span>
  </div>
);

/** The bearing as the number that leads the screen, when the alignment is in and only the blue is left to do. */
export const BearingHero = ({ bearing }: { readonly bearing: BearingVerdict }) => (
  <div className="far">
    <div className="num hero">
      {bearing.share === undefined ? '' : percent(bearing.share).split('\u00a0')[0]}
    </div>
    <div className="unit hero-unit">
      {'% bearing'}
      {bearing.least_zone === undefined ? '' : `\nthinnest zone ${percent(bearing.least_zone)}`}
    </div>
    <Word bearing={bearing} />
  </div>
);
