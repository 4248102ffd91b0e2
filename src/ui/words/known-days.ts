/** `'as on 12 March'`, of an ISO date. */
export const asOnWords = (date: string): string => `as on ${dayMonthWords(date)}`;

/** `'12 March'`, of an ISO date. */
export const dayMonthWords = (date: string): string =>
  new Date(`${date}T12:00:00Z`).toLocaleDateString('en-GB', {
    day: 'numeric',
    month: 'long',
    timeZone: 'UTC',
  });
