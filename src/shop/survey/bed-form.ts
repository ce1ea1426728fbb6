import type { JobPlan } from '../../core/ledger/entry.ts';
import { surveyKey, type TakenSurvey } from '../../core/ledger/survey-record.ts';
import { type Bed, heightAt } from '../../core/site/bed.ts';
import { surveyLine } from '../../core/survey/line.ts';
import type { LineInput } from '../../core/survey/line-input.ts';
import { padLooks, surveySubjects } from './subjects.ts';

/** The form of the bed under each pad, from its ways' surveys; or what is not surveyed yet. */
export type BedForm =
  | { readonly ok: true; readonly bed: Bed; readonly notes: readonly string[] }
  | { readonly ok: false; readonly lacks: readonly string[] };

/** A part of the normal this small only touches what a way does in that direction. */
const faint = 0.05;
/** A pad that looks up less than this is guided, not carried. */
const carried = 0.3;

interface Form {
  readonly stations_mm: readonly number[];
  readonly heights_um: readonly number[];
}

/**
 * Heights along each pad's own normal, station by station from the headstock end:
 *
 *     h = n_up · up-and-down + n_across · sideways                                          (1)
 *
 * Where every way that carries was stepped with a level, gravity is the datum of all and the ways' slopes against each other (twist) are in it.
 * Otherwise each is taken from the line through its own ends, and twist from end to end is not.
 */
export function bedForm(plan: JobPlan, surveys: ReadonlyMap<string, TakenSurvey>): BedForm {
  const { pads, free } = plan.slide;
  const found = [...surveys.values()].filter(
    (one): one is TakenSurvey & { what: 'line'; input: LineInput } =>
      one.what === 'line' && (one.input.kind === 'angles' || one.input.kind === 'heights'),
  );
  const surveyOf = (pad: string, direction: 'vertical' | 'horizontal') =>
    found.findLast((one) => one.ways.includes(pad) && (one.input.direction ?? 'vertical') === direction);
  const needed = pads.map((pad) => {
    const { across, up } = padLooks(pad, free);
    const vertical = surveyOf(pad.name, 'vertical');
    const horizontal = surveyOf(pad.name, 'horizontal');
    const isCarried = Math.abs(up) > carried;
    return {
      pad: pad.name,
      across,
      up,
      vertical,
      horizontal,
      isLacking: isCarried ? !vertical : !horizontal,
      isCarried,
    };
  });
  const lacking = needed.filter((one) => one.isLacking);
  if (lacking.length) {
    const subjects = surveySubjects(plan);
    const keys = lacking.map((one) => {
      const kind = one.isCarried ? 'vertical' : 'horizontal';
      return subjects.find((subject) => subject.kind === kind && subject.ways.includes(one.pad))!.key;
    });
    return { ok: false, lacks: [...new Set(keys)] };
  }
  const uprights = needed.filter((one) => one.isCarried).map((one) => one.vertical!);
  const byGravity = uprights.every((one) => one.sheet.how === 'level');
  const formOf = (taken: TakenSurvey & { what: 'line'; input: LineInput }, raw: boolean): Form => {
    const survey = surveyLine(taken.input);
    return {
      stations_mm: survey.profile.stations_mm.map((at) => at + taken.from_mm),
      heights_um: raw ? survey.profile.heights_um : survey.endpoint_um,
    };
  };
  const parts = needed.map((one) => ({
    pad: one.pad,
    forms: [
      ...(one.vertical && Math.abs(one.up) > faint
        ? [{ share: one.up, form: formOf(one.vertical, byGravity) }]
        : []),
      ...(one.horizontal && Math.abs(one.across) > faint
        ? [{ share: one.across, form: formOf(one.horizontal, false) }]
        : []),
    ],
  }));
  const all = parts.flatMap(({ forms }) => forms.map(({ form }) => form.stations_mm));
  const first = Math.max(...all.map((stations) => stations[0]!));
  const last = Math.min(...all.map((stations) => stations.at(-1)!));
  if (!(last > first)) return { ok: false, lacks: uprights.map(surveyKey) };
  const stations_mm = [...new Set(all.flat())]
    .filter((at) => at >= first && at <= last)
    .sort((a, b) => a - b);
  const ways = parts.map(({ pad, forms }) => ({
    pad,
    height_um: stations_mm.map((at) =>
      forms.reduce(
        (sum, { share, form }) => sum + share * heightAt(form.stations_mm, form.heights_um, at),
        0,
      ),
    ),
  }));
  const straight = needed.filter((one) => one.isCarried && Math.abs(one.across) > faint && !one.horizontal);
  return {
    ok: true,
    bed: { stations_mm, ways },
    notes: [
      ...(straight.length
        ? [
            `Sideways is not surveyed for ${straight.map((one) => one.pad).join(', ')}: it is taken as straight.`,
          ]
        : []),
      ...(byGravity || uprights.length < 2
        ? []
        : [
            'Not every way was stepped with a level, so each is taken from its own ends: twist of the ways from end to end is not in this.',
          ]),
    ],
  };
}
