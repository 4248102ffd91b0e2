export const KINDS: Readonly<Record<string, unknown>>;
