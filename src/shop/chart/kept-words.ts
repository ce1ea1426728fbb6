import type { KeptResult } from '../../core/ledger/rebuild-record.ts';
import { say } from '../../core/quantity/say.ts';
import { clean, type UnitSystem } from '../../core/quantity/unit.ts';
import type { LineShown } from './line-shown.ts';

/** A kept result in the unit its line is shown in: "as found +31.0 ± 6.0 µm in 1000 mm". */
export function keptWords(
  { when, result }: KeptResult,
  line: Pick<LineShown, 'unit_um' | 'unit_text' | 'plus_text' | 'over_mm'>,
  system: UnitSystem,
): string {
  const { value_um, doubt_um, over_mm } = result;
  // A slope kept over another length than the line's is spoken over the line's, as the chart does.
  const scale = over_mm === undefined || line.over_mm === undefined ? 1 : line.over_mm / over_mm;
  const shown = (um: number): number => clean((um * scale) / line.unit_um);
  const said = say(shown(value_um), '', {
    signed: line.plus_text !== undefined,
    decimals: system === 'metric' ? 1 : 2,
    ...(doubt_um === undefined ? {} : { sd: shown(doubt_um) / 2 }),
  });
  const doubt = doubt_um === undefined ? ', doubt not told' : '';
  return `${when === 'first' ? 'as found' : 'now'} ${said.text.trimEnd()} ${line.unit_text}${doubt}`;
}
