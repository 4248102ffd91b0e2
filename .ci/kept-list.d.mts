export function withChecks<T extends { url: string }>(
  folder: string,
  files: readonly T[],
): (T & { integrity: string; isFirst?: true })[];
