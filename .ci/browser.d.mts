export function findChromium(): string | undefined;
export function findPageEngine(): string | undefined;
export function installDebian(packages: readonly string[]): boolean;

/** Small packages with a font for each script that the tests print. */
export const SCRIPT_FONTS: readonly string[];
