/** Rasters that one reading works on, one element for each of the surface's. */
export interface Workspace {
  readonly blueness: Float32Array;
  readonly shade: Float32Array;
  readonly unread: Uint8Array;
}

/** New memory, for whoever keeps what is in it. */
export const fresh = (many: number): Workspace => ({
  blueness: new Float32Array(many),
  shade: new Float32Array(many),
  unread: new Uint8Array(many),
});

/** Larger ones are not kept: 4 million elements are 36 MB, a surface of 600 × 100 mm. */
const mostKept = 4e6;
let kept = fresh(0);

/**
 * The same rasters every time, which the next reading writes over: memory that is new costs as much as two sweeps over it, since the
 * system clears it page by page. Nothing of them may be handed out with a reading.
 */
export function keptWorkspace(many: number): Workspace {
  if (many > mostKept) return fresh(many);
  if (kept.unread.length < many) kept = fresh(many);
  const { blueness, shade, unread } = kept;
  return {
    blueness: blueness.subarray(0, many),
    shade: shade.subarray(0, many),
    unread: unread.subarray(0, many).fill(0),
  };
}
