import { plain } from '../../core/quantity/show.ts';
import type { Worked } from '../worked.ts';
import { type KitReport, type ProofShown, partName } from './kit-report.ts';

const n = (value: number): string => plain(value, 5);

/** How each doubt comes about, part by part, and what room it leaves. µm or µrad as the set-up measures. */
export const kitWorking = ({ proofs }: KitReport): Worked[] => proofs.flatMap(proofWorked);

function proofWorked(proof: ProofShown): Worked[] {
  const { target, setup, parts, doubt, room, ratio } = proof;
  const unit = proof.unit === 'um' ? 'µm' : 'µrad';
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
      worked: `${n(room)}/${n(doubt)} = ${n(ratio)}; both ${unit}`,
    },
  ];
}
