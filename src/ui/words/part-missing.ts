/** What is said when a part of the app did not come. `isOnPhone`: it is there for the next start. */
export function partMissingWords(isOnPhone: boolean, isHolding: boolean): string {
  const open = isOnPhone ? 'Open the app again' : 'It is fetched when the app is opened with signal';
  const what = isOnPhone
    ? 'A part of the app could not be loaded.'
    : 'This part of the app is not on this phone.';
  // Opening again would cost what the disk has not taken yet.
  if (isHolding) return `${what} ${open}, but not before everything here is saved.`;
  return `${what} ${open}; nothing is lost.`;
}
