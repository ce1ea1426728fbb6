import type { LineInput } from './line-input.ts';
import { type Profile, profileOf } from './profile.ts';
import { type Straightness, type StraightnessSds, straightness, straightnessSds } from './reference-lines.ts';
import { type Wear, wearBelow } from './wear.ts';

/** What a survey of a line finds. */
export interface LineSurvey extends Straightness {
  readonly profile: Profile;
  /** One standard deviation of each result; left out when nothing is known of the doubt. */
  readonly sd?: StraightnessSds;
  readonly wear?: Wear;
}

/**
 * Straightness of a way from stepwise angles or from heights, with the doubt of each result and the wear below unworn stretches.
 * @throws RangeError  lists of differing length, fewer than three stations
 */
export function surveyLine(input: LineInput): LineSurvey {
  const profile = profileOf(input);
  const { stations_mm, heights_um, causes } = profile;
  const result = straightness(stations_mm, heights_um);
  const wear = input.unworn_mm && wearBelow(stations_mm, heights_um, input.unworn_mm, causes);
  return {
    ...result,
    profile,
    ...(causes ? { sd: straightnessSds(stations_mm, result, causes) } : {}),
    ...(wear ? { wear } : {}),
  };
}
