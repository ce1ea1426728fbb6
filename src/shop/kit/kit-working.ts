import { plain } from '../../core/quantity/show.ts';
import type { UnitSystem } from '../../core/quantity/unit.ts';
import { type ShownIn, shownIn } from '../shown-in.ts';
import type { Worked } from '../worked.ts';
import { type KitReport, type ProofShown, partName } from './kit-report.ts';

/** How each doubt comes about, part by part, and what room it leaves. */
export const kitWorking = ({ proofs }: KitReport, system: UnitSystem = 'metric'): Worked[] =>
  proofs.flatMap((proof) => proofWorked(proof, shownIn(system, 5)));

function proofWorked(proof: ProofShown, { um, urad, small, slope }: ShownIn): Worked[] {
  const { target, setup, parts, doubt, room, ratio } = proof;
  const [n, unit] = proof.unit === 'um' ? [um, small] : [urad, slope];
  const told = parts.filter((part) => part.sd > 0);
  const of = `${target}, by ${setup}`;
  return [
    {
      what: `${of}: doubt`,
      formula: '2 √(Σ sd²), parts that do not know of each other',
      worked: `2 × √(${told.map((part) => `${n(part.sd)}²`).join(' + ') || '0'}) = ${n(doubt)} ${unit}; ${told.map((part) => `${n(part.sd)} ${partName(part.what)}`).join(', ') || 'no part has any'}`,
      source: 'JCGM 100 (GUM), combined standard uncertainty, coverage factor 2',
    },
    {
      what: `${of}: room over doubt`,
      formula: 'from the middle of the band to a limit / doubt',
      worked: `${n(room)}/${n(doubt)} = ${plain(ratio, 5)}; both ${unit}`,
    },
  ];
}
