import { describe, expect, test } from 'vitest';
import { dayFileOfStory, STORIES } from '../../sample-days/all-days.ts';
import firstScreen from '../../sample-days/lanes.json';
import { lanesOf } from '../../sample-days/lanes.ts';
import { loadSample, loadSampleFile, sampleText } from '../../sample-days/load.ts';
import { fullDay } from '../../sample-days/scenario-full.ts';
import { WallClock } from '../../sample-days/wall-clock.ts';
import { answersAtTake, answersNow } from '../../src/day/answers/answers.ts';
import { castOf } from '../../src/day/cast-of-scene.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import type { Day, FactOf, Slate } from '../../src/day/model.ts';
import { conflictsOf } from '../../src/day/phones/conflicts.ts';
import { tracksOf } from '../../src/day/recorders/recorder-parts.ts';
import { recordersOf, rollingAtTake, rollingNow } from '../../src/day/recorders/rolling.ts';
import { sceneOfSlate, scenesInOrder } from '../../src/day/scenes-in-order.ts';
import { slateText, takeText } from '../../src/day/slate.ts';
import { nextTake, takesInOrder } from '../../src/day/takes.ts';
import { databaseOf, isFactId } from '../../src/shared/ids.ts';

describe.each(['small', 'full'] as const)('the %s sample day', (name) => {
  test('is exactly what its story gives', () => {
    expect(dayFileOfStory(STORIES[name]())).toBe(sampleText(name));
  });

  test('folds at once to what the story folded fact by fact', () => {
    const told = STORIES[name]().day;
    const loaded = loadSample(name);
    expect(loaded.takes).toEqual(told.takes);
    // A chain that was said and taken back has used up its number; where one follows another is the same.
    const said = ({ line }: Day) =>
      line.map(({ fact, takenBack, chainBefore }, at) => ({
        fact,
        takenBack,
        isNewChain: at > 0 && chainBefore !== line[at - 1]!.chainBefore,
      }));
    expect(said(loaded)).toEqual(said(told));
    expect(loaded.tail).toEqual(told.tail);
    expect(answersNow(loaded)).toEqual(answersNow(told));
  });

  test('is marked as a sample, has a fixed id and reads without a warning', () => {
    const { day, warnings, facts } = loadSampleFile(name);
    expect(day).toBe(`sample-${name}`);
    expect(warnings).toEqual([]);
    expect(facts.every(({ id }) => isFactId(id) && databaseOf(id) === 'sampl1')).toBe(true);
    expect(loadSample(name).header.sample).toBe(true);
  });

  test('has no conflict that nobody settled', () => {
    expect(conflictsOf(loadSample(name))).toEqual([]);
  });
});

test('what the first screen draws is what the full sample day says of those takes', () => {
  expect(firstScreen).toEqual(lanesOf(STORIES.full().day));
  // By hand, from the table of expected-full.txt.
  expect(firstScreen.takes.map(({ text, circled }) => `${text}${circled ? ' circled' : ''}`)).toEqual([
    '44C/1',
    '44C/2 circled',
    '45/1',
    '45/2 circled',
    '45A/1',
    '45A/2',
  ]);
  const said = firstScreen.lanes.map(
    ({ track, bands }) =>
      `${track}: ${bands.map(({ from, to, name, state }) => `${name} ${state} ${from}-${to}`).join(', ')}`,
  );
  expect(said).toEqual([
    '1: Mix mix 0-5',
    '2: Boom Jurrien single 0-5',
    '7: Old Tibor single 0-1, Rozália single 2-5',
    '8: Emil single 0-1, Conductor single 2-5',
    '15: Emil single 2-3, Stoker single 4-5',
    '16: Zuzu, Otto gang 0-5',
  ]);
});

test('no fact of one sample day has the id of a fact of another', () => {
  const ids = (['small', 'full'] as const).flatMap((name) => loadSampleFile(name).facts.map(({ id }) => id));
  expect(new Set(ids).size).toBe(ids.length);
});

const factsOf = <Kind extends Day['facts'][number]['kind']>(day: Day, kind: Kind): FactOf<Kind>[] =>
  day.facts.filter((fact) => fact.kind === kind) as FactOf<Kind>[];

describe('the full sample day', () => {
  const day = loadSample('full');
  const takes = takesInOrder(day);
  const voices = [...day.voices.values()];

  test('has a full cast, a full rig, and more than twenty setups and seventy takes', () => {
    const ofKind = (kind: string) => voices.filter((voice) => voice.kind === kind).length;
    expect([ofKind('performer'), ofKind('boom'), ofKind('plant'), ofKind('feed')]).toEqual([13, 2, 1, 1]);
    expect(recordersOf(day).map(({ name }) => name)).toEqual(['Cart', 'Bag', 'Backup']);
    expect(recordersOf(day).map(({ id }) => tracksOf(day.rig, id).length)).toEqual([16, 6, 16]);
    expect(day.rig.selectors.length).toBe(4);
    expect(day.rig.receivers.map(({ place }) => place)).toEqual(['cart', 'remote', 'cart']);
    expect(
      new Set(
        takes.filter(({ kind }) => kind !== 'wild' && kind !== 'tone').map((take) => slateText(take.slate)),
      ).size,
    ).toBe(26);
    expect(takes.length).toBe(75);
  });

  test('has every kind of take', () => {
    const kinds = new Set(takes.map(({ kind }) => kind));
    expect([...kinds].sort()).toEqual(['mos', 'pickup', 'take', 'tone', 'wild']);
    for (const mark of ['circled', 'noGood', 'falseStart', 'tailSlate'] as const)
      expect(takes.some((take) => take[mark])).toBe(true);
    expect(takes.some(({ notes }) => notes.some(({ track }) => track))).toBe(true);
    expect(takes.some(({ notes }) => notes.some(({ track }) => !track))).toBe(true);
  });

  test('has packs that move, corrections said late, and something undone, redone and taken back', () => {
    expect(factsOf(day, 'transmitter-worn').length).toBeGreaterThan(40);
    expect(day.facts.filter(({ before }) => before).length).toBeGreaterThan(1);
    expect(factsOf(day, 'fact-moved').length).toBe(1);
    expect(new Set(factsOf(day, 'fact-retracted').map(({ by }) => by))).toEqual(
      new Set(['hand', 'undo', 'redo']),
    );
  });

  // 24 hours at 25 frames a second are 2 160 000 frames.
  test('has a take that rolls before midnight and is cut after it, and goes on for more than twenty takes', () => {
    const across = takes.findIndex(
      ({ start, length }) => start && length && start.frames + length.frames > 2_160_000,
    );
    expect(slateText(takes[across]!.slate)).toBe('43E');
    expect(takes.slice(across + 1).every(({ start }) => !start || start.frames < 5 * 3600 * 25)).toBe(true);
    expect(takes.length - across).toBeGreaterThan(20);
  });

  test('has one clash, which was settled before the next take', () => {
    const clashing = takes.filter(({ id }) => answersAtTake(day, id).summary.clashes > 0);
    expect(clashing.map(({ slate, number }) => `${slateText(slate)}/${number}`)).toEqual(['44/1']);
  });

  test('moves to the bag for two takes and back again, with a backup that missed one of eight', () => {
    const on = takes
      .filter(({ kind }) => kind !== 'mos')
      .map((take) => {
        const names = rollingAtTake(day, take.id).map(({ name }) => name);
        return `${takeText(take)} ${names.join(' and ')}`;
      });
    expect(on.filter((words) => !words.endsWith(' Cart'))).toEqual([
      'WT2 Bag',
      'RT2 Bag',
      '44/1 Cart and Backup',
      '44/2 Cart and Backup',
      '44/3 Cart and Backup',
      '44A/1 Cart and Backup',
      '44A/2 Cart and Backup',
      '44C/1 Cart and Backup',
      '44C/2 Cart and Backup',
    ]);
    expect(on).toContain('44A/3 Cart');
    expect(rollingNow(day).map(({ name }) => name)).toEqual(['Cart']);
  });

  test('loses nobody: every voice that was waited for is on a track at every take with sound', () => {
    const lost = takes.filter(
      ({ id, kind }) => kind !== 'mos' && answersAtTake(day, id).summary.unrecorded.length > 0,
    );
    expect(lost).toEqual([]);
  });

  test('has the scenes of its call sheet, who is in each, and one to come', () => {
    const listed = scenesInOrder(day).map((scene) => {
      const numbers = castOf(day, scene).map(({ number }) => Number(number));
      return `${scene.number} ${scene.set} ${scene.state}: ${numbers.sort((a, b) => a - b).join(' ')}`;
    });
    expect(listed).toEqual([
      '41 WAITING ROOM done: 1 2 3 4 8',
      '42 BUFFET KITCHEN done: 2 3 7 8 9 10 11 12',
      '43 PLATFORM done: 1 2 3 4 5 6 7 8 9 10 13',
      '44 SIGNAL BOX done: 2 4 5 6 7 8 9 11 12 13',
      '45 COMPARTMENT to-shoot: 1 2 5 7 9 10 11 12 13',
      '46 SIDING to-shoot: 1 9 13',
    ]);
    const slates = takes.filter(({ kind }) => kind !== 'wild' && kind !== 'tone').map(({ slate }) => slate);
    expect(slates.every((slate) => sceneOfSlate(day, slate as Slate) !== undefined)).toBe(true);
  });

  test('knows who is needed from its scenes, but for what was said by hand', () => {
    expect(factsOf(day, 'voices-needed').flatMap(({ scene }) => scene ?? [])).toEqual([
      '41',
      '42',
      '43',
      '44',
      '45',
    ]);
    const needed = answersNow(day).voices.filter(({ need }) => need === 'needed');
    expect(needed.flatMap(({ voice }) => voice.number || [])).toEqual(['1', '5', '7', '9', '11', '12', '13']);
  });

  // Counted from the last setup of the story: tracks 2, 3, 6 to 10, 15 and 16; mic 3 and mic 4 are unplugged.
  test('ends with several people wired, one gang and two free inputs', () => {
    const { summary, main } = answersNow(day);
    expect(summary).toMatchObject({ tracksUsed: 9, tracks: 15, gangs: 1, clashes: 0, muted: 1, free: 2 });
    expect(main.inputs.filter(({ state }) => state === 'free').map(({ input }) => input.id)).toEqual([
      'mic3',
      'mic4',
    ]);
    expect(nextTake(day)).toEqual({ kind: 'take', slate: takes.at(-1)!.slate, number: 3 });
  });

  test('says the same from any order of its facts', () => {
    const shuffled = fullDay().facts.toReversed();
    expect(foldDay('sample-full', shuffled).line).toEqual(day.line);
  });
});

describe('the clock of a story', () => {
  test('goes on past midnight', () => {
    const clock = new WallClock('2026-11-19', 60);
    clock.set('23:59:59.500');
    const before = clock.atMs;
    clock.set('00:00:01');
    expect(clock.atMs - before).toBe(1500);
    expect(before).toBe(Date.UTC(2026, 10, 19, 22, 59, 59, 500));
  });

  test('never goes back', () => {
    const clock = new WallClock('2026-11-19', 60);
    clock.set('17:30');
    expect(() => clock.set('17:29:59')).toThrow('cannot go back');
    expect(() => clock.set('5 pm')).toThrow('Not a time of day');
  });
});
