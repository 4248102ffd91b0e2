/**
 * Does this once the next picture is drawn. A picture that says a tap was felt comes before what the tap asked for: drawn
 * with it, it would be as late.
 */
export const behindPicture = (work: () => void): void => {
  requestAnimationFrame(() => setTimeout(work));
};
