/** The message when part of the app did not load. `isOnPhone`: the next start will find it. */
export function partMissingWords(isOnPhone: boolean, isHolding: boolean): string {
  const open = isOnPhone ? 'Open the app again' : 'It is fetched when the app is next opened with signal';
  const what = isOnPhone
    ? 'Part of the app could not be loaded.'
    : 'This part of the app is not on this phone.';
  // Reopening would lose what is not on the disk yet.
  if (isHolding) return `${what} ${open}, but not before everything here is saved.`;
  return `${what} ${open}; nothing is lost.`;
}
