/** The hours a set of batteries lasts, in whole ones: what the mutation run's own test plants its faults in. */
export function wholeHours(capacity: number, load: number): number {
  if (load <= 0) return 0;
  let hours = 0;
  while ((hours + 1) * load <= capacity) hours += 1;
  return hours;
}
