import { rowGauge } from '../../../draw/row-gauge.ts';
import type { FeatureLine } from '../../../shop/bench/feature-line.ts';
import { capital } from '../../../shop/phrase.ts';
import { shapeElement } from '../figure.tsx';

/** The part of a unit that stands in a row: "µm" of "µm in 300 mm", which the hero number says in full. */
export const shortUnit = (unit: string): string => unit.split(' in ')[0]!;

/** One feature as a row: name and number, the gauge small, the verdict and which way it leans. */
export const FeatureRow = ({ line }: { readonly line: FeatureLine }) => {
  const { said, judged, scale, value } = line;
  return (
    <div className="feature">
      <span>
        {capital(line.name)}{' '}
        <span className="nb" title={said.unit}>
          <span className="num">
            {said.sign}
            {said.number}
          </span>{' '}
          <span className="unit">
            {said.doubt === undefined ? '' : `± ${said.doubt} `}
            {shortUnit(said.unit)}
          </span>
        </span>
      </span>
      {judged && scale.target ? (
        shapeElement(
          rowGauge({
            title: `${line.name}: ${said.text}, ${judged.verdict}`,
            width: 76,
            band: { low: scale.shown(scale.target.low), high: scale.shown(scale.target.high) },
            now: {
              value: scale.shown(value.value),
              doubt: scale.shown(2 * value.sd),
              verdict: judged.verdict,
            },
          }),
        )
      ) : (
        <span />
      )}
      <span className="judged">
        {judged ? (
          <span className={`verdict ${judged.verdict.replace(' ', '-')}`}>{judged.verdict}</span>
        ) : null}
        {judged && judged.verdict !== 'within' && line.way ? <small>{line.way}</small> : null}
      </span>
    </div>
  );
};
