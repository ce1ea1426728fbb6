/** A drawing as paper takes it: an SVG element with its attributes and children. */
export interface Drawn {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly (Drawn | string)[];
}

/** One piece of a document, the whole breadth of the page; pieces stand one below the other and are never cut. */
export type Piece =
  | {
      readonly kind: 'drawing';
      readonly drawing: Drawn;
      /** Stands on the same page as the piece behind it. */
      readonly keep?: true;
      /** Drawn again at the top when this piece begins a page: the head of a table. */
      readonly head?: Drawn;
      /** Space above it, in the drawings' px. */
      readonly above?: number;
    }
  /** Photos side by side, each with its words. */
  | {
      readonly kind: 'photos';
      readonly photos: readonly {
        readonly jpeg: Uint8Array;
        readonly width_px: number;
        readonly height_px: number;
        readonly words: string;
      }[];
    };

export const papers = {
  a4: { width_mm: 210, height_mm: 297 },
  letter: { width_mm: 215.9, height_mm: 279.4 },
} as const;
export type PaperName = keyof typeof papers;

/** A document for paper. */
export interface PaperDocument {
  readonly title: string;
  /** At the foot of every page, before its number. */
  readonly foot: string;
  /** The breadth all drawings were made for, px. */
  readonly width: number;
  readonly pieces: readonly Piece[];
  /** When it was made, ISO 8601. */
  readonly made: string;
}

/** Turns a document into the bytes of a file that a customer keeps. */
export type Press = (document: PaperDocument, paper: PaperName) => Promise<Uint8Array>;
