import { isReference, type KitThing } from '../../core/ledger/kit-ledger.ts';
import { sayLength } from '../../core/quantity/length.ts';
import { sayDeviation } from '../../core/quantity/say.ts';
import { saySlope } from '../../core/quantity/slope.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { referenceShown } from './kit-report.ts';

/** A thing of the kit in a line: what it is, how fine, how long, how far it is known. */
export function thingLine(thing: KitThing, system: UnitSystem): string {
  const um = (value: number): string => sayDeviation(value, system, { signed: false }).text;
  const urad = (value: number): string => saySlope(value, system, { signed: false }).text;
  const mm = (value: number): string => sayLength(value, system, {}).text;
  const rough = { signed: false, rough: true };
  if (isReference(thing)) {
    const size =
      thing.width_mm === undefined ? mm(thing.length_mm) : `${mm(thing.length_mm)} by ${mm(thing.width_mm)}`;
    return `${thing.kind}, ${size}; ${referenceShown(thing, system).text}`;
  }
  if (thing.kind === 'indicator')
    return `${thing.kind}, one division ${um(thing.graduation_um)}; repeats within ±\u202f${sayDeviation(2 * thing.repeatability_um, system, rough).text}`;
  const grade = thing.class === undefined ? '' : `, class ${thing.class}`;
  return `${thing.kind}${grade}, one division ${urad(thing.graduation_urad)}; repeats within ±\u202f${saySlope(2 * thing.repeatability_urad, system, rough).text}; base ${mm(thing.base_mm)}`;
}
