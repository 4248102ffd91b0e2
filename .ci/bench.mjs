// Measures what this project's work costs beside others: `npm run bench`, or `npm run bench -- radio card` for some of it.
// Prints one table; a whole run also writes it into tests/bench/README.md. Exits with 1 when a budget is missed.
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { runnerImport } from 'vite';

const load = async (path) => (await runnerImport(path)).module;
const { benchTable } = await load(new URL('../tests/bench/table.ts', import.meta.url).pathname);
const wanted = process.argv.slice(2);
const { text, kept } = await benchTable((url) => load(new URL(url).pathname), wanted);
console.log(text);
if (wanted.length === 0) {
  const readme = new URL('../tests/bench/README.md', import.meta.url);
  const when = `Measured on ${new Date().toISOString().slice(0, 10)}, ${cpus().length} cores, Node ${process.versions.node}.`;
  const table = `<!-- bench -->\n${when}\n\n${text}\n<!-- /bench -->`;
  const old = readFileSync(readme, 'utf8');
  writeFileSync(
    readme,
    old.replace(/<!-- bench -->[\s\S]*<!-- \/bench -->/, () => table),
  );
}
process.exit(kept ? 0 : 1);
