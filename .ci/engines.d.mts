/** Where the parts of WebKitGTK are that a test needs. */
export interface WebKitPaths {
  readonly browser: string;
  readonly driver: string;
  readonly display: string;
}
export function findFirefox(): string | undefined;
export function findWebKit(): WebKitPaths | undefined;
