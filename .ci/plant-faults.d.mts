/** A small fault: the text from `start` to `end` becomes another. */
export interface PlantedFault {
  readonly kind: string;
  readonly file: string;
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly becomes: string;
}
export function faultsIn(file: string, text: string): PlantedFault[];
export function plant(text: string, fault: PlantedFault): string;
