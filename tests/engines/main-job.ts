import { expect } from 'vitest';
import { type Server, startServer } from '../browser/harness-server.ts';
import { type Engine, type Hands, handsOn, type LastingEngine } from './engine.ts';

const NOTE = 'hum, Ø & ß: 50 Hz';

const EMIL = `\
            Cart: 1 Mix · 2 Boom Jurrien · 3 Boom Saskia · 6 Emil
            7 Rozália · 8 Conductor (muted) · 9 Siân · 10 Ксенија
            15 Stoker · 16 Zuzu, Otto (ganged)
`;
/** The report's lines of the two takes, but for their times, which nobody can foretell. 45B/3 is as the take before it. */
const AS_SAID = `\
(45B/3)     14C_45BT03.wav    start  end  length
            circled
            - ${NOTE}
 45B/4      14C_45BT04.wav    start  end  length
${EMIL}`;
/** Emil had the pack before 45B/3 already, so it is 45B/4 that is as the take before it. */
const AS_CORRECTED = `\
(45B/3)     14C_45BT03.wav    start  end  length
            circled
${EMIL}            - ${NOTE}
 45B/4      14C_45BT04.wav    start  end  length
`;

const takesMadeHere = (shown: string): string => {
  // Each line is a block of its own, and a browser that is asked for what is drawn puts an empty one below it.
  const report = shown.replace(/\n+/g, '\n');
  return report
    .slice(report.indexOf('(45B/3)'), report.indexOf('\nNOT SETTLED') + 1)
    .replace(/(\d\d:\d\d:\d\d:\d\d( {2}|(?=\n))){3}/g, 'start  end  length');
};

/** Rolls, cuts, circles and notes one take, gives the pack to another, and makes a second take. */
async function shoot({ press, says, type, closed }: Hands): Promise<void> {
  await press(/^Roll$/);
  await says(/45B\/3 rolling/);
  await press(/^Cut$/);
  await says(/45B\/3 cut/);
  await press(/^circle 3 take/);
  await says(/45B\/3 circled/);
  await press(/^note 3 take/);
  await type(/^Own words/, NOTE);
  await press(/^Add note$/);
  await says(/Noted on 45B\/3/);
  await closed();
  await press(/Wiktoria/);
  await press(/^Emil/);
  await says(/A1 on Emil/);
  await closed();
  await press(/^Roll$/);
  await says(/45B\/4 rolling/);
  await press(/^Cut$/);
  await says(/45B\/4 cut/);
}

/** On the line: the pack had moved before the first of the two takes already. */
async function correct({ press, says, closed, tab, textOf }: Hands): Promise<void> {
  await tab(/^Line$/);
  await press(/A1 on Emil/);
  await press(/^before 45B\/3$/);
  await says(/Moved: every later take follows/);
  await press(/^Close$/);
  await closed();
  // Newest first: what was placed before a take stands under it.
  const line = (await textOf('ol.line')).replace(/\s+/g, ' ');
  expect(line).toMatch(/45B\/4 · \S+ \S+ 45B\/3 · .+ 50 Hz \S+ A1 on Emil \S+ 45B\/2/);
}

async function readReport({ reads, textOf }: Hands): Promise<string> {
  await reads('.report-text', /^SOUND REPORT/);
  return takesMadeHere(await textOf('.report-text'));
}

/** The three files that go out can be made, the pages among them: their part of the app came before the signal went. */
async function makeFiles({ reads, textOf }: Hands): Promise<void> {
  await reads('.send-dock', /3 files, \d/);
  const files = await textOf('.report-send li');
  expect(files.split('\n').map((name) => name.split('.').at(-1))).toEqual(['pdf', 'csv', 'txt']);
  expect(await textOf('.report-send .warn')).toBe('');
}

/**
 * The main job, from the first visit to the report, with no signal from the second screen on. What happens to the
 * browser after that is the caller's; `reopened` then reads the report again.
 */
async function doMainJob(engine: Engine, server: Server, hands: Hands): Promise<void> {
  const { press, reads, readyOffline, tab, saved, listen } = hands;
  await engine.goTo(server.origin);
  await readyOffline();
  await server.kill();
  await expect(fetch(server.origin)).rejects.toThrow();
  await listen();
  await press(/^Sample day$/);
  await reads('.rows', /Wiktoria/);
  await shoot(hands);
  await tab(/^Wrap$/);
  expect(await readReport(hands)).toBe(AS_SAID);
  await correct(hands);
  await tab(/^Wrap$/);
  expect(await readReport(hands)).toBe(AS_CORRECTED);
  await makeFiles(hands);
  await saved();
  await engine.reload();
  expect(await readReport(hands)).toBe(AS_CORRECTED);
}

/** Does the main job in an engine, and ends it whatever happens. */
export async function mainJobIn<E extends Engine>(
  open: () => Promise<E>,
  afterwards: (engine: E, hands: Hands, server: Server) => Promise<void> = async () => {},
): Promise<void> {
  const started = performance.now();
  const server = await startServer();
  try {
    const engine = await open();
    const hands = handsOn(engine);
    try {
      await doMainJob(engine, server, hands);
      await afterwards(engine, hands, server);
      expect(await engine.faults()).toEqual([]);
      console.log(`${engine.name}: ${((performance.now() - started) / 1000).toFixed(1)} s`);
    } catch (error) {
      if (error instanceof Error) error.message += `\n${await whatIsShown(engine, hands)}`;
      throw error;
    } finally {
      await engine.close();
    }
  } finally {
    await server.kill();
  }
}

/** Ends the browser and starts it again with no signal: the day is on the list, and its report is the same. */
export async function afterRestart(engine: LastingEngine, hands: Hands, server: Server): Promise<void> {
  await engine.restart();
  await engine.goTo(server.origin);
  await hands.press(/Nine Below Arnholt.* 77 takes/);
  await hands.tab(/^Wrap$/);
  expect(await readReport(hands)).toBe(AS_CORRECTED);
}

const whatIsShown = (engine: Engine, { textOf }: Hands): Promise<string> =>
  textOf('body')
    .then((text) => `The screen read: ${text.slice(0, 600)}`)
    .catch((error: unknown) => `The screen could not be read: ${String(error)}`)
    .then(async (shown) => [...(await engine.faults()), shown].join('\n'))
    .catch((error: unknown) => `Its faults could not be read: ${String(error)}`);
