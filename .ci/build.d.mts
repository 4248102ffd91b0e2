export function ensureBuilt(): void;
