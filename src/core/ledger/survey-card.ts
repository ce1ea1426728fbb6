/** The set-up cards of surveys and of what goes with them, by the name of their drawing. */
export const surveyCardNames = [
  'level steps',
  'mirror steps, up and down',
  'mirror steps, sideways',
  'under a straightedge',
  'beside a straightedge',
  'straightedge turned, up and down',
  'straightedge turned, sideways',
  'offsets, up and down',
  'offsets, sideways',
  'level on a bridge',
  'way to way',
  'grid of heights',
  'level along a grid',
  'eight lines',
  'square turned over',
  'bar turned half round',
  'pivot test',
  'rock test',
] as const;
export type SurveyCardName = (typeof surveyCardNames)[number];
