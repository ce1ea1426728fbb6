/** Where a machine's job has its order of work. */
export const orderAddress = (job: string): string => `/job/${encodeURIComponent(job)}/order`;

/** Where one of its steps has its page. */
export const stepAddress = (job: string, step: string): string =>
  `${orderAddress(job)}/${encodeURIComponent(step)}`;
