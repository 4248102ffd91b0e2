export function listKeptFiles(folder: string): void;
