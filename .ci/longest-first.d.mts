import type { TestSequencerConstructor } from 'vitest/node';

export const LongestFirst: TestSequencerConstructor;
