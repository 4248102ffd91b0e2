/**
 * The form of a report: how it is worded and laid out. It grows by one when that changes, and a sent report
 * remembers its own, so that it comes back as it went out. From 2 on the table has no changes in it and keeps
 * names as they are; from 3 on each recorder has its own settings, files and tracks, the takes come first, with
 * their ends, and tracks where they change, a report has its letter, pages draw every script the phone has, two packs
 * on one performer are told apart, and the head says who listens and which unit shot what.
 */
export const REPORT_FORM = 3;

/** Reports sent before forms were remembered. */
export const FIRST_FORM = 1;

/** In which a day with several recorders has the tracks and files of one, all tracks stand at every take, and pages have the letters of their own fonts. */
export const SECOND_FORM = 2;

/** The form a report was sent in; one of a newer version is made in the newest known here. */
export const formSent = ({ form = FIRST_FORM }: { readonly form?: number | undefined }): number =>
  Math.min(form, REPORT_FORM);
