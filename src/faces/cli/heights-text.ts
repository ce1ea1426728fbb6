import type { UnitSystem } from '../../core/quantity/unit.ts';
import { bandText, type HeightsAnswer } from '../../shop/order/heights.ts';
import { heightWords } from '../../shop/order/heights-words.ts';
import { table } from './table.ts';

/** Heights, liners and room to scrape, for people. */
export function heightsText(answer: HeightsAnswer, system: UnitSystem = 'metric'): string {
  const { mm, figures, unit, small } = heightWords(system);
  const size = (um: number): string => figures(um / 1000, 4);
  const signed = (um: number): string => {
    const text = size(um);
    return um > 0 && Number(text) !== 0 ? `+${text}` : text;
  };
  return [
    table(
      ['height', `comes to, ${unit}`, `±, ${unit}`, `as found, ${unit}`, 'band', ''],
      answer.heights.map((one) => [
        one.name,
        one.verdict === 'not measured' ? '' : signed(one.um),
        one.verdict === 'not measured' ? '' : size(2 * one.sd_um),
        one.verdict === 'not measured' ? '' : signed(one.found_um),
        bandText(one, system),
        one.verdict,
      ]),
    ),
    ...answer.heights.map((one) =>
      [
        `${one.name}: “${one.from}” to “${one.to}”`,
        table(
          ['link', unit],
          [
            ...one.parts.map((part) => [`drawn, on the ${part.body}`, figures(part.mm, 4)]),
            ...one.changes.map((link) => [`${link.change} (${link.joint}, ${link.when})`, signed(link.um)]),
            ...(one.closure ? [['measured, over what was found', signed(one.closure.um)]] : []),
            ['departure from the drawing', signed(one.um)],
          ],
        ),
        ...(one.backlash_um === undefined
          ? []
          : [`Backlash gained in the mesh: ${signed(one.backlash_um)} ${unit}.`]),
      ].join('\n'),
    ),
    ...answer.liners.map((liner) =>
      [
        `Liner on ${liner.joint}, so that “${liner.brings}” comes back: sheet ${mm(liner.sheet_mm, 2)}, bond ${mm(liner.bond_mm, 2)}, machined ${mm(liner.machining_mm)}, scraped ${mm(liner.scraping_mm)}.`,
        `There it lifts the body by ${mm(liner.rise_um / 1000)}. ${mm(liner.left_mm, 2)} of liner is left; at least ${mm(liner.least_mm, 2)} must stay, so scraping may take ${small.whole(liner.stock_um)}.`,
        table(
          ['face', `must come up, ${unit}`, `mill off first, ${unit}`],
          liner.pads.map((pad) => [pad.pad, figures(pad.raise_mm), figures(pad.mill_mm)]),
        ),
      ].join('\n'),
    ),
    ...answer.limits
      .filter((limit) => limit.sink.length > 0)
      .map((limit) =>
        [
          `${limit.joint} may still sink, when scraping begins:`,
          table(
            ['before it leaves the band of', 'by'],
            limit.sink.map((room) => [room.name, small.whole(room.most_um)]),
          ),
        ].join('\n'),
      ),
    ...answer.warnings.map((warning) => `! ${warning.text}`),
  ].join('\n\n');
}
