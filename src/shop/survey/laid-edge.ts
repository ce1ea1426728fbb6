import { edgeStart, type LaidEdge } from '../../core/kit/edge-bend.ts';
import type { MaterialName } from '../../core/kit/material.ts';
import type { SurveySheet } from '../../core/ledger/survey-record.ts';
import { sayLength } from '../../core/quantity/length.ts';
import { listed } from '../phrase.ts';
import { fieldWords } from './sheet-hows.ts';
import { fieldValue, type SheetLayout } from './sheet-layout.ts';

const needed = ['edge_length', 'edge_depth', 'edge_material'] as const;

/**
 * The straightedge as a sheet says it lay, once the sheet says what it stood on; nothing before: its sag is taken out only where that is asked for.
 * What still lacks is said in words.
 */
export function laidEdge(
  sheet: SurveySheet,
  layout: SheetLayout,
): { readonly straightedge?: LaidEdge; readonly wrong?: string } {
  const stands = sheet.fields.edge_stands?.trim() ?? '';
  const { fields } = layout;
  const isRead = (name: string) => fields[name]?.is === 'read' && sheet.fields[name]?.trim() !== '';
  const warm = fields.edge_warmer;
  if (stands === '')
    return warm?.is === 'read' && warm.value !== 0
      ? { wrong: 'Say what the straightedge stands on; its warmth is taken out together with its sag.' }
      : {};
  const lacks = [...needed, ...(stands === 'at' ? ['edge_support'] : [])].filter((name) => !isRead(name));
  if (lacks.length > 0) {
    const words = listed(lacks.map((name) => `“${fieldWords[name]!.label}”`));
    return { wrong: `To take the straightedge’s sag out, say ${words}; or leave its sag in.` };
  }
  const from = fieldValue(fields, 'from');
  const stations = [from + layout.stations_mm[0]!, from + layout.stations_mm.at(-1)!];
  const edge = {
    length_mm: fieldValue(fields, 'edge_length'),
    depth_mm: fieldValue(fields, 'edge_depth'),
    material: sheet.fields.edge_material!.trim() as MaterialName,
    ...(stands === 'ends' ? { support_mm: 0 } : {}),
    ...(stands === 'at' ? { support_mm: fieldValue(fields, 'edge_support') } : {}),
    ...(warm?.is === 'read' ? { warmer_K: warm.value, warmer_sd_K: warm.sd ?? 0 } : {}),
    ...(isRead('edge_from') ? { from_mm: fieldValue(fields, 'edge_from') } : {}),
  };
  // So far as the cells go it would lie evenly about those alone: its place is that of the whole survey.
  const start = edgeStart(edge, stations);
  const say = (mm: number) => sayLength(mm, sheet.lengths === 'mm' ? 'metric' : 'inch').text;
  if (start > stations[0]! + 1e-6 || start + edge.length_mm < stations[1]! - 1e-6)
    return {
      wrong: `The straightedge lies from ${say(start)} to ${say(start + edge.length_mm)} and does not reach over the stops from ${say(stations[0]!)} to ${say(stations[1]!)}.`,
    };
  if ((edge.support_mm ?? 0) > edge.length_mm / 2)
    return {
      wrong: `A support ${say(edge.support_mm!)} from each end lies beyond the straightedge’s middle.`,
    };
  return { straightedge: { ...edge, from_mm: start } };
}
