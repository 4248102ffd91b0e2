import type { Day } from '../src/day/model.ts';
import { writeDayFile } from '../src/facts/day-file/day-file.ts';
import { fullDay } from './scenario-full.ts';
import { smallDay } from './scenario-small.ts';
import type { Story } from './story.ts';

/** Every sample day by the name of its file, as it is told. */
export const STORIES: Readonly<Record<SampleName, () => Story>> = { small: smallDay, full: fullDay };

export type SampleName = 'small' | 'full';

/** The day file of a story; its title is the one the app gives on export. */
export const dayFileOfStory = ({ day, facts }: Story): string => writeDayFile(day.id, titleOf(day), facts);

const titleOf = ({ header }: Day): string => `${header.production} ${header.label}`;
