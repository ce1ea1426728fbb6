import type { FeatureLine } from '../../../shop/bench/feature-line.ts';
import { VerdictWord } from '../frame/mark.tsx';

/** More figures than stand beside a verdict on a phone at full size. */
const isLong = ({ said }: FeatureLine): boolean => `${said.sign}${said.number}${said.doubt ?? ''}`.length > 4;

/** The number that leads the screen, with its doubt, unit and verdict. */
export const Hero = ({ line }: { readonly line: FeatureLine }) => (
  <div className="far">
    <div className={isLong(line) ? 'num hero long' : 'num hero'}>
      {line.said.sign}
      {line.said.number}
      {line.said.doubt === undefined ? null : <span className="doubt"> ± {line.said.doubt}</span>}
    </div>
    <div className="unit hero-unit">{line.said.unit.replace(' in ', ' in\n')}</div>
    {line.judged ? <VerdictWord verdict={line.judged.verdict} side={line.judged.side} /> : null}
  </div>
);
