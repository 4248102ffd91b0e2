export function findChromium(): string | undefined;
export function installDebian(packages: readonly string[]): boolean;
