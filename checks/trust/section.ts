/** One comparison of a check: numbers with what may lie between them, or words and lists that are to be the same. */
export interface Compared {
  /** Full name of the test, as the runner joins it. */
  readonly test: string;
  readonly found: unknown;
  readonly wanted: unknown;
  /** In the same unit as the numbers; left out, nothing may lie between them. */
  readonly tolerance?: number;
  /** As it stands in print. */
  readonly printed?: string;
}

/** More than this in one test, and only the furthest apart is shown. */
const mostShown = 12;

/** Digits that are worth showing: down to a tenth of what may lie between. */
function shown(value: number, tolerance: number): string {
  const size = Math.abs(value);
  if (size === 0 || !Number.isFinite(value)) return String(value === 0 ? 0 : value);
  const places = Math.ceil(-Math.log10(tolerance)) + 1;
  const most = 15 - Math.floor(Math.log10(size)) - 1;
  const decimals = Math.max(0, Math.min(places, most));
  if (decimals <= 12 && size < 1e9)
    return Number(value.toFixed(decimals)) === 0 ? '0' : value.toFixed(decimals);
  return value.toPrecision(Math.max(1, Math.min(15, Math.floor(Math.log10(size)) + 1 + decimals)));
}

const small = (value: number): string => String(Number(value.toPrecision(2)));

/** What lies between, to a hundredth of what may: below that it is the last bits of the arithmetic. */
function apart(found: number, wanted: number, tolerance: number): string {
  const off = Math.abs(found - wanted);
  return off < 0.01 * tolerance ? '0' : small(off);
}

const words = (value: unknown): string =>
  typeof value === 'number'
    ? String(Number(value.toPrecision(12)))
    : typeof value === 'string'
      ? value
      : JSON.stringify(value);

const share = (one: Compared): number =>
  one.tolerance ? Math.abs((one.found as number) - (one.wanted as number)) / one.tolerance : 0;

function cells(one: Compared): string[] {
  if (one.tolerance === undefined) return [words(one.wanted), words(one.found), '0', 'none'];
  const found = one.found as number;
  const wanted = one.wanted as number;
  // A value that is to be nothing, or to agree to the last bits, is shown as it is meant.
  const tolerance = one.tolerance || 1e-12;
  return [
    one.printed ?? words(wanted),
    shown(found, tolerance),
    apart(found, wanted, tolerance),
    small(one.tolerance),
  ];
}

const cell = (text: string): string =>
  text.replaceAll('|', '\\|').replaceAll('\u00a0', ' ').replace(/\s+/g, ' ');
const line = (parts: readonly string[]): string => `| ${parts.map(cell).join(' | ')} |`;

/** A file's row in the table of sources and its own table, as Markdown. */
export function section(compared: readonly Compared[]): { row: string; body: string } {
  const tests = new Map<string, Compared[]>();
  for (const one of compared) tests.set(one.test, [...(tests.get(one.test) ?? []), one]);
  const rows = [...tests].flatMap(([test, all]) => {
    const title = test.replaceAll(' > ', ': ');
    const kept = [...new Map(all.map((one) => [line(cells(one)), one])).values()];
    // A test's name stands in its first row only.
    if (kept.length <= mostShown) return kept.map((one, k) => line([k === 0 ? title : '', ...cells(one)]));
    const furthest = all.reduce((worst, one) => (share(one) > share(worst) ? one : worst));
    return [line([`${title} (furthest apart of ${all.length})`, ...cells(furthest)])];
  });
  const furthest = Math.max(...compared.map(share));
  return {
    row: `${compared.length} | ${furthest < 0.01 ? '0' : String(Number(furthest.toPrecision(1)))} |`,
    body: [
      '| what | held against | ours | apart | allowed |',
      '| --- | --- | --- | --- | --- |',
      ...rows,
    ].join('\n'),
  };
}
