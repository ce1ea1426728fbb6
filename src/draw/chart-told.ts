import type { ChartRow } from './chart-row.ts';
import type { ChartSheet } from './chart-sheet.ts';
import type { PartsFaceFigure } from './parts-face.ts';
import type { ScrapeMapFigure } from './scrape-map.ts';
import type { Shape } from './shape.ts';
import type { SweepPlotFigure } from './sweep-plot.ts';

/** A print of the whole slide: bearing share by pad and zone. */
export interface PrintDrawn {
  readonly round: number;
  readonly share: Readonly<Record<string, readonly number[]>>;
  readonly text: string;
}

export type SlideTold = Pick<ScrapeMapFigure, 'slide' | 'places' | 'turnedOver'>;

/** A sweep as paper draws it: places in mm or in, readings in µm or thou. */
export interface SweepDrawn {
  readonly name: string;
  readonly round: number;
  readonly when: 'as found' | 'last';
  readonly plot: Pick<SweepPlotFigure, 'points' | 'fit' | 'x_unit_mm' | 'y_unit_mm'> & {
    readonly x_name: string;
    readonly y_name: string;
  };
}

/** A part as it comes off, as paper draws it. */
export type PartDrawn =
  | {
      readonly kind: 'profile';
      readonly title: string;
      readonly places: readonly number[];
      readonly value: readonly number[];
      readonly doubt: readonly number[];
      readonly planned?: readonly number[];
      readonly x: { readonly name: string; readonly left: string; readonly right: string };
      readonly y_name: string;
    }
  | ({ readonly kind: 'face' } & Pick<PartsFaceFigure, 'title' | 'places_mm' | 'out_um' | 'ends'>);

/** What the work on one bench has to tell. */
export interface AccountTold {
  readonly rounds: readonly {
    readonly round: number;
    readonly on?: string;
    readonly found: readonly string[];
    readonly scraped?: string;
  }[];
  readonly removal: readonly string[];
  readonly before?: PrintDrawn;
  readonly after?: PrintDrawn;
  readonly bearing: string;
  readonly setups: readonly { readonly name: string; readonly text: string }[];
  readonly cautions: readonly string[];
  readonly sweeps: readonly SweepDrawn[];
  readonly parts?: { readonly texts: readonly string[]; readonly drawn: readonly PartDrawn[] };
}

/** What paper says of a chart beside its lines, every text ready. */
export interface ChartTold extends ChartSheet {
  readonly groups: readonly { readonly name: string; readonly lines: readonly LineTold[] }[];
  readonly remaining: readonly {
    readonly number: number;
    readonly name: string;
    readonly text: string;
    readonly minutes?: number;
    readonly measured: boolean;
  }[];
  readonly next?: string;
  readonly condition: readonly string[];
  readonly done: readonly string[];
  readonly job?: AccountTold;
  readonly slide?: SlideTold;
  /** Of a whole machine: the step whose bench the job itself is. */
  readonly step?: string;
  /** Of a whole machine: its benches that are jobs of their own. */
  readonly benches: readonly {
    readonly step: string;
    readonly account: AccountTold;
    readonly slide: SlideTold;
  }[];
  readonly scaling?: string;
  readonly left_out: readonly string[];
}

/** A row with what is said of it elsewhere on the paper. */
interface LineTold extends ChartRow {
  readonly id: string;
  readonly how: string;
  readonly direction?: { readonly allowed: string; readonly reason: string } | undefined;
  readonly source_text: string;
  readonly first_with?: string;
  readonly now_with?: string;
  readonly bench?: { readonly text: string };
}

/** When a document was made: ISO 8601, and its day as paper has it. */
export interface Made {
  readonly at: string;
  readonly day: string;
}

export interface PaperPhoto {
  readonly jpeg: Uint8Array;
  readonly width_px: number;
  readonly height_px: number;
  readonly words: string;
}

/** One piece of a document, as the press takes it. */
export type ChartPiece =
  | {
      readonly kind: 'drawing';
      readonly drawing: Shape;
      readonly keep?: true;
      readonly head?: Shape;
      readonly above?: number;
    }
  | { readonly kind: 'photos'; readonly photos: readonly PaperPhoto[] };
