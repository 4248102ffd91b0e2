export function findNatsServer(): string | undefined;
export function needNatsServer(): string;
