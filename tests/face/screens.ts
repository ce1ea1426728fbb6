export const demo = '/job/demo-saddle';

/** Every screen, with what must stand on it before it is looked at. */
export const screens: readonly (readonly [string, string])[] = [
  [demo, 'Passes by zone'],
  [`${demo}/measure`, 'Each set-up tells one thing'],
  [`${demo}/measure/square/1`, 'Push the plunger'],
  [`${demo}/measure/level_across/1`, 'Keep this level'],
  [`${demo}/print`, 'Which way did you turn it?'],
  [`${demo}/ledger`, 'newest first'],
  [`${demo}/survey`, 'No way is surveyed yet'],
  [`${demo}/survey/${encodeURIComponent('vertical of flat')}`, 'Say the step'],
  [`${demo}/chart`, 'as this job measured it'],
  [`${demo}/parts`, 'How long it lasts'],
  ['/kit', 'The kit is empty'],
  ['/kit/new/indicator', 'what stands on its dial'],
  ['/sums', 'sums'],
  ['/sums/level-turned', 'Put in an example'],
  ['/jobs', 'New job'],
  ['/new', 'What lies on your bench?'],
  ['/practise', 'What goes wrong on purpose'],
  ['/settings', 'Light or dark'],
  ['/signs', 'The push test'],
];
