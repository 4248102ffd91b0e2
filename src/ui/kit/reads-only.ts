import { signal } from '@preact/signals';

/** Whether the open day is only read on this phone: sheets and pages then show everything and offer nothing. */
export const isReadOnly = signal(false);
