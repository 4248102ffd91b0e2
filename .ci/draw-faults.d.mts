import type { PlantedFault } from './plant-faults.mjs';

export function drawFaults(
  root: string,
  room: string,
  asked: { readonly seed: number; readonly count: number },
): PlantedFault[];
