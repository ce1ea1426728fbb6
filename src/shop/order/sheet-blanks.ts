import type { AxisRecord, HeightsRecord } from '../../core/ledger/rebuild-record.ts';
import type { Template } from '../../core/ledger/template.ts';
import type { Machine } from '../../core/order/machine.ts';
import { machineSizes, slidePlan } from './bench-plan.ts';

type Change = NonNullable<HeightsRecord['changes']>[number];
type Liner = NonNullable<HeightsRecord['liners']>[number];

/** The faces of a slide of a machine, as its bench names them; empty while the slide or its template is not known. */
export function slidePads(
  machine: Machine,
  slide: string,
  templates: readonly Template[],
): readonly string[] {
  const its = machine.slides.find((one) => one.id === slide);
  const template = templates.find((one) => one.id === its?.template);
  if (!its || !template) return [];
  return slidePlan(its, template, machineSizes(machine), machine.title).slide.pads.map((pad) => pad.name);
}

/** Slides whose resting takes part in the machine's heights. */
export const heightSlides = (
  machine: Machine,
): readonly { readonly value: string; readonly words: string }[] =>
  (machine.heights?.joints ?? []).map((joint) => ({
    value: joint.slide,
    words: machine.slides.find((one) => one.id === joint.slide)?.name ?? joint.slide,
  }));

/** Wear as it was found, to begin with: nothing off any face. */
export const blankChange = (joint: string, pads: readonly string[]): Change => ({
  name: 'wear as found',
  joint,
  when: 'found',
  off_um: Object.fromEntries(pads.map((pad) => [pad, 0])),
  sd_um: 5,
});

/** What a change does to each face, whichever way it is written, µm. */
export const changeSizes = (change: Change): Readonly<Record<string, number>> =>
  change.off_um ?? change.on_um ?? {};

/** The same change written as taken off or as put on. */
export function writtenAs(
  change: Change,
  way: 'off' | 'on',
  sizes: Readonly<Record<string, number>>,
): Change {
  const { off_um: _off, on_um: _on, ...rest } = change;
  return way === 'off' ? { ...rest, off_um: sizes } : { ...rest, on_um: sizes };
}

/** A liner on every face of a slide, to begin with. */
export const blankLiner = (joint: string, pads: readonly string[], brings: string): Liner => ({
  joint,
  pads,
  brings,
});

/** What a person knows of a bar and its readings before anything is typed; bands are remembered of ordinary lathes, and may be changed. */
export const blankAxis = (of: string): AxisRecord => ({
  of,
  asked: {
    bar: { diameter_mm: 40, out_mm: 320, near_mm: 20, far_mm: 320 },
    readings: [
      { side: 'top', near: [0, 0], far: [0, 0] },
      { side: 'front', near: [0, 0], far: [0, 0] },
    ],
    bands: {
      up: { low_um: 0, high_um: 20, over_mm: 300 },
      sideways: { low_um: 0, high_um: 15, over_mm: 300 },
    },
  },
});

/** Two bars alike, exchanged: what a person knows of the tailstock's height before anything is typed. */
export const blankCentres = (of: string): AxisRecord => ({
  of,
  asked: {
    centres: [
      { kind: 'two bars', plane: 'up', first_um: 0, exchanged_um: 0, low_um: 0, high_um: 40, aim_um: 20 },
    ],
  },
});
