import { readAngle } from '../quantity/angle.ts';
import { readDeviation } from '../quantity/deviation.ts';
import { readLength } from '../quantity/length.ts';
import { refuse, type Unreadable } from '../quantity/refusal.ts';
import { readSlope } from '../quantity/slope.ts';
import { tidy } from '../quantity/token.ts';
import type { UnitSystem } from '../quantity/unit.ts';
import type { SumUnit } from './sum.ts';

/** A typed input that was understood, in its sum's unit. */
export interface SumTyped {
  readonly ok: true;
  readonly value: number;
  /** One standard deviation, when a doubt (two of them) was typed behind ±. */
  readonly sd?: number;
}

interface Factor {
  readonly words: RegExp;
  readonly size: number;
}

/** Units that only sums have, each with how it may be written; the first is what a bare number takes. */
const plainUnits: Partial<Record<SumUnit, readonly Factor[]>> = {
  K: [
    { words: /^(k|kelvin|°c|c|deg c)?$/i, size: 1 },
    { words: /^(°f|f|deg f)$/i, size: 5 / 9 },
  ],
  um_mK: [
    { words: /^(um\/m\/k|um\/\(m k\)|um\/mk|um per m and k|ppm\/k|ppm)?$/i, size: 1 },
    { words: /^(\/k|1\/k|per k|\/c|\/°c)$/i, size: 1e6 },
    { words: /^(\/f|\/°f|per f)$/i, size: 1.8e6 },
  ],
  GPa: [
    { words: /^(gpa|kn\/mm2)?$/i, size: 1 },
    { words: /^(mpa|n\/mm2)$/i, size: 1e-3 },
    { words: /^(msi|mpsi)$/i, size: 6.894757 },
  ],
  kg_m3: [
    { words: /^(kg\/m3|kg\/m\^3)?$/i, size: 1 },
    { words: /^(g\/cm3|g\/cm\^3|kg\/dm3|t\/m3)$/i, size: 1000 },
  ],
  kg: [
    { words: /^kg?$/i, size: 1 },
    { words: /^(|kg)$/i, size: 1 },
    { words: /^g$/i, size: 1e-3 },
    { words: /^(lb|lbs)$/i, size: 0.45359237 },
  ],
  divisions: [{ words: /^(div|divs|division|divisions)?$/i, size: 1 }],
};

const ways: Partial<Record<SumUnit, string>> = {
  K: 'Write 2 K or 3.6 °F.',
  um_mK: 'Write 11.5 or 11.5e-6/K.',
  GPa: 'Write 210 GPa.',
  kg_m3: 'Write 7850 kg/m3 or 7.85 g/cm3.',
  kg: 'Write 0.1 kg or 100 g.',
  divisions: 'Write 1.5 or 1.5 div.',
  ratio: 'Write 1:50, 1/4 in per ft or 20 mm/m.',
};

function readPlain(text: string, unit: SumUnit): SumTyped | Unreadable {
  const match = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*(.*)$/i.exec(text);
  const way = ways[unit]!;
  if (!match) return refuse(`I cannot read “${text.slice(0, 24)}”. ${way}`);
  const factor = plainUnits[unit]!.find((one) => one.words.test(match[2]!));
  if (!factor) return refuse(`I can read ${match[1]}, but not “${match[2]!.slice(0, 24)}”. ${way}`);
  let value = Number(match[1]) * factor.size;
  // Nobody's metal grows by 11.5e-6 µm per m and K: a bare number that small is per kelvin.
  if (unit === 'um_mK' && factor.size === 1 && value !== 0 && Math.abs(value) < 1e-3) value *= 1e6;
  return Number.isFinite(value) ? { ok: true, value } : refuse(`That number is too large to be read. ${way}`);
}

function readRatio(text: string): SumTyped | Unreadable {
  const match = /^(\d*\.?\d+)\s*(?::|\/| in )\s*(\d*\.?\d+)$/.exec(text);
  if (match) {
    const value = Number(match[1]) / Number(match[2]);
    return Number.isFinite(value) ? { ok: true, value } : refuse(`A taper needs a length. ${ways.ratio}`);
  }
  if (/^[+-]?(\d+\.?\d*|\.\d+)(e-?\d+)?$/i.test(text)) return { ok: true, value: Number(text) };
  if (/arc|deg|°|rad|min|sec/i.test(text)) return refuse(`That is an angle, not a taper. ${ways.ratio}`);
  const read = readSlope(text, 'urad');
  return read.ok ? { ok: true, value: read.urad / 1e6 } : read;
}

function readOne(text: string, unit: SumUnit, system: UnitSystem): SumTyped | Unreadable {
  if (unit === 'mm') {
    const read = readLength(text, system === 'metric' ? 'mm' : 'in');
    return read.ok ? { ok: true, value: read.mm } : read;
  }
  if (unit === 'um') {
    const read = readDeviation(text, system === 'metric' ? 'um' : 'thou');
    return read.ok ? { ok: true, value: read.um } : read;
  }
  if (unit === 'urad') {
    const read = readSlope(text, system === 'metric' ? 'urad' : 'thou/12 in');
    return read.ok ? { ok: true, value: read.urad } : read;
  }
  if (unit === 'deg') {
    // A lean of nothing is no angle between faces, but it is one of a flat.
    if (/^0(\.0*)?\s*(°|deg\w*)?$/i.test(text)) return { ok: true, value: 0 };
    const read = readAngle(text);
    return read.ok ? { ok: true, value: read.deg } : read;
  }
  return unit === 'ratio' ? readRatio(text) : readPlain(text, unit);
}

const firstNumber = /^[+-]?\s*(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?(?:[ -]\d+\/\d+|\/\d+(?=\s*[a-z"]))?/i;

/**
 * An input as typed: `40 mm`, `1.575 in`, `60° 30'`, `1:50`, `12 um in 300 mm`; with its doubt of two sd behind ± or +-:
 * `40 mm ± 4 um`. A bare number takes the sum's unit (inch system: in, thou, thou in 12 in); a bare doubt the unit of its value.
 */
export function readSumInput(typed: string, unit: SumUnit, system: UnitSystem): SumTyped | Unreadable {
  const [first, second, ...more] = tidy(typed).split(/\s*(?:±|\+\/-|\+-)\s*/);
  const value = readOne(first!, unit, system);
  if (!value.ok || second === undefined) return value;
  if (more.length > 0) return refuse('More than one doubt is written. Write 40 mm ± 4 um.');
  const doubt = readOne(withUnitOf(first!, second, unit), unit, system);
  if (!doubt.ok) return refuse(`The doubt behind ±: ${doubt.why}`);
  if (doubt.value < 0) return refuse('The doubt behind ± is below nothing. Write 40 mm ± 4 um.');
  return { ok: true, value: value.value, sd: doubt.value / 2 };
}

/** The doubt with the value's unit behind it when it has none of its own. */
function withUnitOf(value: string, doubt: string, unit: SumUnit): string {
  if (unit === 'ratio' || !/^(\d+\.?\d*|\.\d+)$/.test(doubt)) return doubt;
  const unitText = value.replace(firstNumber, '');
  // "1 ft 6 in ± 2": two of which? The reader refuses "2 ft 6 in" less kindly than a wrong number would be taken.
  return unit !== 'urad' && /\d/.test(unitText) ? `${doubt} of an unnamed unit` : doubt + unitText;
}
