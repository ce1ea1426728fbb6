import type { BearingVerdict } from '../../../core/plan/answer.ts';

/** The bearing as a row beside the features: a verdict of its own, never mixed with the alignment's. */
export const BearingLine = ({ bearing }: { readonly bearing: BearingVerdict }) => {
  const share = (value: number) => `${Math.round(value * 100)} %`;
  const words = { proven: 'within', 'not proven': 'not proven', 'not printed': 'not printed' }[
    bearing.verdict
  ];
  return (
    <div className="feature">
      <span>
        Bearing {bearing.share === undefined ? null : <span className="num">{share(bearing.share)}</span>}
        {bearing.least_zone === undefined ? null : (
          <span className="unit"> thinnest zone {share(bearing.least_zone)}</span>
        )}
      </span>
      <span />
      <span className="judged">
        <span className={bearing.verdict === 'proven' ? 'verdict within' : 'verdict not-proven'}>
          {words}
        </span>
      </span>
    </div>
  );
};
