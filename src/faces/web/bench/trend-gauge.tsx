import { useMemo } from 'react';
import { type GaugeRow, gauge } from '../../../draw/gauge.ts';
import type { FeatureLine, Valued } from '../../../shop/bench/feature-line.ts';
import { Figure } from '../figure.tsx';
import { useWidth } from '../frame/width.ts';
import { gaugeBand } from './gauge-band.ts';

/** A value of an earlier or a coming round. */
export interface RoundValue extends Valued {
  readonly label: string;
}

/** Jaws and pins: the leading feature over the rounds, now, and what the plan should bring. */
export function TrendGauge(props: {
  readonly line: FeatureLine | undefined;
  readonly scaleOf: FeatureLine['scale'];
  readonly past: readonly RoundValue[];
  readonly now?: string;
  readonly forecast?: RoundValue | undefined;
}) {
  const { line, scaleOf, past, now = 'now', forecast } = props;
  const [ref, width] = useWidth<HTMLDivElement>(358);
  const shape = useMemo(() => {
    const { words, say, shown } = scaleOf;
    const short = (value: Valued): string => {
      const said = say(value.value, { sd: value.sd });
      return `${said.sign}${said.number} ± ${said.doubt ?? '0'}`;
    };
    const row = (value: RoundValue, kind: GaugeRow['kind'], text: string): GaugeRow => ({
      kind,
      label: value.label,
      value: shown(value.value),
      doubt: shown(2 * value.sd),
      text,
    });
    const rows: GaugeRow[] = past.map((value) => row(value, 'past', short(value)));
    if (line)
      rows.push({
        ...row({ ...line.value, label: now }, 'now', short(line.value)),
        ...(line.judged ? { verdict: line.judged.verdict } : {}),
        ...(line.to_go ? { to_go: line.to_go } : {}),
      });
    if (forecast) rows.push(row(forecast, 'forecast', `forecast ${short(forecast)}`));
    return gauge({
      title: `${scaleOf.feature.name} against its band, round by round, ${say(0).unit}`,
      width,
      band: gaugeBand(scaleOf),
      rows,
      ...(words ? { minus_word: words.minus, plus_word: words.plus } : {}),
    });
  }, [line, scaleOf, past, now, forecast, width]);
  return (
    <div ref={ref}>
      <Figure shape={shape} />
    </div>
  );
}
