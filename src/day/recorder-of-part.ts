import { FIRST_RECORDER } from '../facts/kinds/recorder-set.ts';
import type { Part, PartId } from './model.ts';

/** The recorder that an input, a track or a send belongs to. */
export const recorderOfPart = ({ recorder }: Pick<Part, 'recorder'>): PartId => recorder ?? FIRST_RECORDER;
