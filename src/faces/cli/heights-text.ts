import { bandText, type HeightsAnswer } from '../../shop/order/heights.ts';
import { table } from './table.ts';

const mm = (value_mm: number, places = 3): string =>
  `${value_mm < 0 && Number(value_mm.toFixed(places)) !== 0 ? '−' : ''}${Math.abs(value_mm).toFixed(places)}`;
const signed = (um: number): string => {
  const text = mm(um / 1000, 4);
  return um > 0 && Number(text) !== 0 ? `+${text}` : text;
};

/** Heights, liners and room to scrape, for people. */
export function heightsText(answer: HeightsAnswer): string {
  return [
    table(
      ['height', 'comes to, mm', '±, mm', 'as found, mm', 'band', ''],
      answer.heights.map((one) => [
        one.name,
        one.verdict === 'not measured' ? '' : signed(one.um),
        one.verdict === 'not measured' ? '' : mm((2 * one.sd_um) / 1000, 4),
        one.verdict === 'not measured' ? '' : signed(one.found_um),
        bandText(one),
        one.verdict,
      ]),
    ),
    ...answer.heights.map((one) =>
      [
        `${one.name}: “${one.from}” to “${one.to}”`,
        table(
          ['link', 'mm'],
          [
            ...one.parts.map((part) => [`drawn, on the ${part.body}`, mm(part.mm, 4)]),
            ...one.changes.map((link) => [`${link.change} (${link.joint}, ${link.when})`, signed(link.um)]),
            ...(one.closure ? [['measured, over what was found', signed(one.closure.um)]] : []),
            ['departure from the drawing', signed(one.um)],
          ],
        ),
        ...(one.backlash_um === undefined
          ? []
          : [`Backlash gained in the mesh: ${signed(one.backlash_um)} mm.`]),
      ].join('\n'),
    ),
    ...answer.liners.map((liner) =>
      [
        `Liner on ${liner.joint}, so that “${liner.brings}” comes back: sheet ${liner.sheet_mm} mm, bond ${liner.bond_mm} mm, machined ${liner.machining_mm} mm, scraped ${liner.scraping_mm} mm.`,
        `There it lifts the body by ${mm(liner.rise_um / 1000)} mm. ${mm(liner.left_mm, 2)} mm of liner is left; at least ${mm(liner.least_mm, 2)} mm must stay, so scraping may take ${liner.stock_um.toFixed(0)} µm.`,
        table(
          ['face', 'must come up, mm', 'mill off first, mm'],
          liner.pads.map((pad) => [pad.pad, mm(pad.raise_mm), mm(pad.mill_mm)]),
        ),
      ].join('\n'),
    ),
    ...answer.limits
      .filter((limit) => limit.sink.length > 0)
      .map((limit) =>
        [
          `${limit.joint} may still sink, when scraping begins:`,
          table(
            ['before it leaves the band of', 'by, µm'],
            limit.sink.map((room) => [room.name, room.most_um.toFixed(0)]),
          ),
        ].join('\n'),
      ),
    ...answer.warnings.map((warning) => `! ${warning.text}`),
  ].join('\n\n');
}
