export declare const aloneTests: (root: string) => string[];
