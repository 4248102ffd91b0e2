// Prints what this project's work costs beside others: `npm run bench`, or `npm run bench -- radio card` for some of it.
// Exits with 1 when a budget is missed or an answer differs.
import { runnerImport } from 'vite';

const load = async (path) => (await runnerImport(path)).module;
const { printTable } = await load(new URL('../tests/bench/table.ts', import.meta.url).pathname);
const kept = await printTable((url) => load(new URL(url).pathname), process.argv.slice(2));
process.exit(kept ? 0 : 1);
