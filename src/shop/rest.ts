import type { RestAsk } from '../contract/rest.ts';
import { byPad } from '../core/body/slide.ts';
import type { Print } from '../core/observe/round.ts';
import type { NoAnswer } from '../core/plan/problem.ts';
import { type ForetoldAgreement, foretellPrint, foretoldAgreement } from '../core/print/foretold.ts';
import { tableColumns } from '../core/quantity/table-column.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';
import { assumedRest } from '../core/rest/after-scraping.ts';
import { wrenchOf } from '../core/rest/load.ts';
import { type RestAnswer, rest as restOf } from '../core/rest/rest.ts';
import { roughRest } from '../core/rest/rough-rest.ts';

/** How well a share is read where that is not told; shop's own. */
const usualPrintSd = 0.05;

/** What `rest` answers; see docs/contract.md. */
export type Rested = { readonly ok: true } & Omit<RestAnswer, 'converged'> & {
    /** The blue to expect by pad and zone, 0 to 1, and its sd. */
    readonly expected_print: { readonly share: Print; readonly sd: Print };
    readonly roughness_um: number;
    /** Against the print that was seen. */
    readonly agreement?: ForetoldAgreement;
  };

/** How a slide sits on what it touches and the print to expect, or that it does not stay there. */
export function rest(input: RestAsk, system: UnitSystem = 'metric'): Rested | NoAnswer {
  const { converged, ...answer } = restOf(input);
  const { slide, film_um, roughness_um = assumedRest.roughness_um } = input;
  if (converged) {
    const seat = roughRest({
      slide,
      gap_um: input.gaps_um.flat(),
      wrench: wrenchOf(input.load),
      stiffness_N_per_mm3: input.stiffness_N_per_mm3,
      roughness_um,
    });
    const gap_um = seat.converged ? seat.gap_um : answer.gap_um;
    const told = foretellPrint({ slide, gap_um, roughness_um, film_um });
    const agreement =
      input.print && foretoldAgreement(slide, told, input.print, input.print_sd ?? usualPrintSd);
    const of = (key: 'share' | 'sd') =>
      byPad(
        slide,
        told.map((zone) => zone[key]),
      );
    return {
      ok: true,
      ...answer,
      expected_print: { share: of('share'), sd: of('sd') },
      roughness_um,
      ...(agreement ? { agreement } : {}),
    };
  }
  const { force_N, at_mm } = input.load;
  const { length } = tableColumns(system);
  return {
    ok: false,
    why: 'not held',
    limits: [],
    text: `the load of ${force_N} N at [${at_mm.map(length.figures).join(', ')}] ${length.unit} lifts or tips the slide off its pads; expected a load that presses it onto them`,
  };
}
