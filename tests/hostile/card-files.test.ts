import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readCard, sourceOf } from '../../src/app/card/read-card.ts';
import { settleAll } from '../../src/commands/line/settle-card.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import type { Day } from '../../src/day/model.ts';
import { type Draft, type Fact, readFact } from '../../src/facts/fact.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { openDifferences } from '../../src/reconcile/differences/difference.ts';
import { differencesOf } from '../../src/reconcile/differences/differences-of.ts';
import { matchRecordings } from '../../src/reconcile/pairing/match-recordings.ts';
import { startLogFromCard } from '../../src/reconcile/start-log.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportOf } from '../../src/report/model.ts';
import { idSource } from '../../src/shared/ids.ts';
import { sentenceFor } from '../../src/ui/words/problems.ts';
import { joinRecordings } from '../../src/wave/recording/recordings.ts';
import { noteFault } from '../browser/faults-table.ts';
import { MORNING, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { bext, buildWave, chunk, data, fmt, ixml } from '../wave/build-wave.ts';
import { CASES, isUnpolluted, NASTY_TEXTS, SHARE } from './cases.ts';

const SEED = 20_261_041;
const FILES_A_CARD = 4;

const text = fc.oneof(
  { weight: 2, arbitrary: fc.constantFrom(...NASTY_TEXTS) },
  { weight: 2, arbitrary: fc.constantFrom('24A', '1', 'A1', 'Ines', 'TRUE', '25/1', '48000') },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 20 }) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;">]>&b;',
      '<!ENTITY x SYSTEM "file:///etc/passwd">&x;',
      '<a>'.repeat(200),
      ']]>',
      '<![CDATA[<script>alert(1)</script>]]>',
      '&#x0;&#xD800;&#99999999;',
    ),
  },
);
const escaped = (value: string): string => value.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

/** A wave file whose texts are hostile; some as they are, so that they break the XML, some escaped. */
const waveFile = fc
  .record({
    name: text,
    scene: text,
    take: text,
    tape: text,
    note: text,
    track: text,
    element: fc.constantFrom('SCENE', '__proto__', 'constructor', 'x:y', 'TRACK_LIST', 'SPEED'),
    raw: fc.boolean(),
    flips: fc.array(fc.tuple(fc.nat(2000), fc.nat(255)), { maxLength: 3 }),
  })
  .map(({ name, raw, flips, ...said }) => {
    const at = (value: string): string => (raw ? value : escaped(value));
    const document =
      `<SCENE>${at(said.scene)}</SCENE><TAKE>${at(said.take)}</TAKE><TAPE>${at(said.tape)}</TAPE>` +
      `<NOTE>${at(said.note)}</NOTE><${said.element}>${at(said.note)}</${said.element}>` +
      `<TRACK_LIST><TRACK><CHANNEL_INDEX>1</CHANNEL_INDEX><NAME>${at(said.track)}</NAME></TRACK></TRACK_LIST>`;
    const wave = buildWave([
      bext({
        description: `sSCENE=${said.scene}\r\nsTAKE=${said.take}`.slice(0, 256),
        timeReference: 48_000,
      }),
      fmt(),
      chunk('note', 'odd'),
      data(96),
      ixml(document),
    ]);
    return { name: `${name.slice(0, 100)}.wav`, wave, flips };
  });
const card = fc.array(waveFile, { minLength: FILES_A_CARD, maxLength: FILES_A_CARD });

async function fileOf({ name, wave, flips }: typeof waveFile extends fc.Arbitrary<infer V> ? V : never) {
  const bytes = new Uint8Array(await wave.read(0, wave.size));
  for (const [place, value] of flips) if (place >= 12 && place < bytes.length) bytes[place] = value;
  return new File([bytes], name);
}

const LOGGED: readonly Fact[] = (() => {
  const ids = idSource('phonea00000');
  const say = (...drafts: Draft[]): Fact[] =>
    stampFacts(drafts, { day: 'day-1', at: MORNING, zone: 120, nextId: ids.next });
  return [...say(...SMALL_RIG, ...SMALL_CAST), ...say(take('24', 1, 1)), ...say(take('24', 1, 2))];
})();

/** How the drawings begin that the report makes itself. */
const OWN_DRAWING = /<svg (?=xmlns="[^"]+" class="picture" |aria-hidden="true" x="|x="\d|viewBox="0 0 )/g;

/** Says on the day what a command came to, and what does not hold of that. */
function wrongAfter(day: Day, facts: readonly Fact[], drafts: readonly Draft[], withPage: boolean): string[] {
  const ids = idSource('phonea00000');
  for (const { id } of facts) ids.see(id);
  const said = stampFacts(drafts, { day: 'day-1', at: MORNING, zone: 120, nextId: ids.next });
  const unfit = said.filter((fact) => !readFact(fact).ok).map(({ kind }) => `unfit ${kind}`);
  const after = foldDay(day.id, [...facts, ...said]);
  const page = withPage ? reportHtml(reportOf(after)).replace(OWN_DRAWING, '<p ') : '';
  return /<(script|img|svg)\b/i.test(page) ? [...unfit, 'markup in the report'] : unfit;
}

describe(`hostile card files, seed ${SEED}`, () => {
  test(`${CASES.cardFiles} generated ones are compared and settled without harm, or refused in words`, async () => {
    let files = 0;
    let refused = 0;
    let settled = 0;
    let harmed = 0;
    const day = foldDay('day-1', LOGGED);
    const empty = foldDay('day-1', []);
    await fc.assert(
      fc.asyncProperty(card, async (waves) => {
        files += waves.length;
        const wrong: string[] = [];
        const given = await Promise.all(waves.map(fileOf));
        const read = await readCard(given.map(sourceOf), new AbortController().signal, () => {});
        const recordings = joinRecordings(read.descriptions);
        refused += read.refused.length;
        if (
          read.descriptions.length + read.refused.length !==
          given.filter(({ name }) => !name.startsWith('.')).length
        )
          if (!given.some(({ name }) => name.startsWith('.'))) wrong.push('a file is not accounted for');
        for (const { problem } of read.refused)
          if (sentenceFor(problem).includes(`(${problem.code})`)) wrong.push(`no words for ${problem.code}`);
        const withPage = files % 40 === 0;
        for (const { settlements } of openDifferences(differencesOf(day, matchRecordings(day, recordings)))) {
          for (const settlement of settlements) {
            const said = settleAll(day, [settlement]);
            if (said.ok) wrong.push(...wrongAfter(day, LOGGED, said.value, false));
            else if (sentenceFor(said.problem).includes(`(${said.problem.code})`)) wrong.push('no words');
            settled += Number(said.ok);
          }
        }
        const started = startLogFromCard(recordings, 'lettered');
        if (started.ok) wrong.push(...wrongAfter(empty, [], started.value, withPage));
        harmed += Number(wrong.length > 0);
        expect(wrong).toEqual([]);
      }),
      { seed: SEED, numRuns: CASES.cardFiles / FILES_A_CARD, endOnFailure: true },
    );
    noteFault('hostile card files', `${files} files, ${refused} refused, ${settled} settlements`, harmed);
    expect(files).toBe(CASES.cardFiles);
    expect(settled).toBeGreaterThan(SHARE * 1000);
    expect(isUnpolluted()).toBe(true);
  }, 240_000);
});
