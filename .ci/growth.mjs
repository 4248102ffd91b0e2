// Measures how cost grows with takes, tracks, facts, files and days, and draws tests/pictures/growth.svg: `npm run growth`.
import { runnerImport } from 'vite';

const { module } = await runnerImport(new URL('../tests/bench/growth/print.ts', import.meta.url).pathname);
await module.printGrowth();
process.exit(0);
