// Plants small faults in the pure rooms, one at a time, and asks whether the room's own tests see them.
// `npm run faults -- mutation`. SEED=7 draws other faults, EACH=5 fewer of each room, ROOMS=wave,time looks at these only.
import { appendFileSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { drawFaults } from './draw-faults.mjs';
import { plant } from './plant-faults.mjs';
import { openWarmTests } from './warm-tests.mjs';

const ROOT = resolve(import.meta.dirname, '..');
const PURE = 'shared,time,facts,day,matching,plan,radio,upkeep,wave,reconcile,report,callsheet,commands';
const { SEED: seed = '1', EACH: each = '20', ROOMS: asked = PURE, FAULTS_TABLE: table } = process.env;
/** Some faults change nothing that anybody could see, so of a hundred ten may be missed. */
const ALLOWED = 0.1;
/** What the longest room takes on a machine with much else to do, with nothing planted. */
const UNHARMED_MS = 600_000;
/** An endless loop is ended when this has passed, and what the room's tests take unharmed has passed five times. */
const SLACK_MS = 20_000;

// The tests are wanted as `npm test` runs them, and their rows of the table are not.
delete process.env.FAULTS;
delete process.env.FAULTS_TABLE;

const read = (file) => readFileSync(join(ROOT, file), 'utf8');
const warm = await openWarmTests(ROOT);
const tests = warm.tests.map((path) => ({ path, folder: path.split('/')[1], text: read(path), tookMs: 0 }));

/** The tests of the file's room; others would see some faults too, and outside checks and fuzzing would take long. */
function testsOf(file) {
  const own = tests.filter(({ folder }) => folder === file.split('/')[1]);
  const asked = ({ text }) => (text.includes(`/${file}'`) ? 0 : 1);
  // What asks the file itself sees most of its faults, and what is quick sees some before what is slow has begun.
  return own.sort((a, b) => asked(a) - asked(b) || a.tookMs - b.tookMs).map(({ path }) => path);
}

/** How long the tests of these files take with nothing planted. They must pass, or whatever is planted would be seen. */
async function unharmedMs(files) {
  const start = performance.now();
  const all = [...new Set(files.flatMap(testsOf))];
  const why = await warm.fails(all, { file: files[0], text: read(files[0]) }, UNHARMED_MS);
  if (why) throw new Error(`With nothing planted there failed ${why}`);
  for (const test of tests) test.tookMs = warm.tookMs(test.path);
  return performance.now() - start;
}

let tried = 0;
const missed = [];
for (const room of asked.split(',')) {
  const faults = drawFaults(ROOT, room, { seed: Number(seed), count: Number(each) });
  const limitMs = SLACK_MS + 5 * (await unharmedMs(faults.map(({ file }) => file)));
  for (const fault of faults) {
    const text = read(fault.file);
    const why = await warm.fails(
      testsOf(fault.file),
      { file: fault.file, text: plant(text, fault) },
      limitMs,
    );
    const was = text.slice(fault.start, fault.end).replace(/\s+/g, ' ');
    const what = `${fault.file}:${fault.line} ${fault.kind}: ${was} -> ${fault.becomes || 'nothing'}`;
    tried += 1;
    if (!why) missed.push(what);
    console.log(why ? `seen    ${what}\n        by ${why}` : `MISSED  ${what}`);
  }
}
await warm.close();

const allowed = Math.floor(tried * ALLOWED);
console.log(`\n${missed.length} of ${tried} planted faults were missed (seed ${seed}):`);
for (const what of missed) console.log(`  ${what}`);
if (table) {
  const row = {
    fault: 'small faults in the code',
    tried: `${tried} planted, seed ${seed}`,
    lost: missed.length,
    allowed,
  };
  appendFileSync(table, `${JSON.stringify(row)}\n`);
}
process.exit(missed.length > allowed ? 1 : 0);
