/** Where a survey's sheet is: the key of what is surveyed, in the address. */
export const surveyAddress = (job: string, key: string): string =>
  `/job/${encodeURIComponent(job)}/survey/${encodeURIComponent(key)}`;
