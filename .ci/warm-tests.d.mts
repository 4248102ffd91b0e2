export interface WarmTests {
  readonly tests: readonly string[];
  tookMs(test: string): number;
  fails(
    tests: readonly string[],
    inPlace: { readonly file: string; readonly text: string },
    limitMs: number,
  ): Promise<string | undefined>;
  close(): Promise<void>;
}
export function openWarmTests(root: string): Promise<WarmTests>;
