export function packagesOf(moduleIds: readonly string[]): string[];
export function licenceList(moduleIds: readonly string[]): string;
export const OF_THE_WORKER: readonly string[];
