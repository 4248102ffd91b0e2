export function asPlainScript(code: string): { script: string; module: string };
export function makeFirstScriptPlain(folder: string): Promise<void>;
