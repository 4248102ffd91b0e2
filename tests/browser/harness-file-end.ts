import { afterAll } from 'vitest';
import { closeSharedBrowser } from './harness-browsers.ts';

// Registered before those of the test file, so it runs after them, when the last stage is closed.
afterAll(closeSharedBrowser);
