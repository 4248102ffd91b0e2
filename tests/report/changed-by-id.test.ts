import { describe, expect, test } from 'vitest';
import type { Day } from '../../src/day/model.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { reportOf } from '../../src/report/model.ts';
import { changeText } from '../../src/report/revision/change.ts';
import { reportChanges } from '../../src/report/revision/report-changes.ts';
import { reportToSend } from '../../src/report/revision/report-to-send.ts';
import { take } from '../day/say.ts';
import { dayWithMixesByWord } from './mixes-by-word.ts';
import { smallDay } from './report-day.ts';

type SmallDay = ReturnType<typeof smallDay>;

const MADE = { paper: 'a4', lines: 'take', columns: ['file'], signature: '', matters: [] } as const;
const modelOf = (day: Day) => reportOf(day);

/** The changes of the report that goes out when something is said after A went out. */
function sentAfter(day: SmallDay, ...drafts: Draft[]): { letter: string; changes: string[] } {
  const made = { ...MADE, columns: [...MADE.columns], matters: [] };
  day.phone.say({ kind: 'report-sent', letter: 'A', route: 'share', files: [], to: [], made });
  for (const draft of drafts) day.phone.say(draft);
  const { letter, revision } = reportToSend(day.phone.day(), [], modelOf);
  return { letter, changes: (revision?.changes ?? []).map(changeText) };
}

describe('a report with mixes L and R and isos that count from 1', () => {
  test('is no A again when a mix was renamed', () => {
    const found = sentAfter(dayWithMixesByWord(), {
      kind: 'part-described',
      part: 'trR',
      fields: { name: 'Comms mix' },
    });
    expect(found).toEqual({
      letter: 'B',
      changes: [
        'Track R: was R: Mix, is Comms mix: Mix.',
        '24A/1, 24A/2, 24B/1 FS, 24B/1, WT1: track R was R: Mix, is Comms mix: Mix.',
      ],
    });
  });

  test('is no A again when a name was typed for a mix by hand', () => {
    const day = dayWithMixesByWord();
    const { letter, changes } = sentAfter(day, {
      kind: 'track-named',
      track: 'tr1',
      name: 'Boom alone',
      before: day.first,
    });
    expect(letter).toBe('B');
    expect(changes).toContain('Track L: was Mix, is Boom alone (typed by hand).');
    expect(changes).toContain(
      '24A/1, 24A/2, 24B/1 FS, 24B/1, WT1: track L was Mix, is Boom alone (typed by hand).',
    );
  });

  test('tells who is on an iso apart from the mix of that place', () => {
    const day = dayWithMixesByWord();
    const { changes } = sentAfter(day, {
      kind: 'transmitter-worn',
      transmitter: 'A1',
      voice: 'tomas',
      before: day.second,
    });
    expect(changes).toEqual([
      'Not settled: Ines gave up a pack and was on no track: 24A/2.',
      'Track 2: was from 24B/1 FS: Tomas, is from 24A/2: Tomas.',
      '24A/2: track 2 was Ines, is Tomas.',
    ]);
  });
});

describe('a changed report is no A again', () => {
  test('when a track that nobody is on came to the recorder, or left it', () => {
    const added = { kind: 'part-described', part: 'tr9', fields: { type: 'track', name: '9' } } as const;
    const day = smallDay();
    expect(sentAfter(day, added)).toEqual({ letter: 'B', changes: ['Nobody on: was 5, is 5, 9.'] });
    expect(sentAfter(smallDay(), { kind: 'part-described', part: 'tr5', fields: { struck: true } })).toEqual({
      letter: 'B',
      changes: ['Nobody on gone: was 5.'],
    });
  });

  test('when the tracks stand in another order', () => {
    expect(
      sentAfter(smallDay(), { kind: 'part-described', part: 'tr1', fields: { order: 90 } }).changes,
    ).toEqual(['Order of tracks: was 1, 2, 3, 4, 5, is 2, 3, 4, 5, 1.']);
  });

  test('when one of two performers of one name reached a track after all', () => {
    const day = smallDay();
    for (const voice of ['cop1', 'cop2'])
      day.phone.say({ kind: 'voice-described', voice, fields: { part: 'Cop' }, before: day.wild } as Draft);
    day.phone.say({
      kind: 'voices-needed',
      voices: ['cop1', 'cop2'].map((voice) => ({ voice, need: 'needed' as const })),
      before: day.wild,
    });
    const found = sentAfter(day, {
      kind: 'voices-needed',
      voices: [{ voice: 'cop2', need: 'resting' }],
      before: day.wild,
    });
    expect(found).toEqual({ letter: 'B', changes: ['Not open any more: Cop was on no track: WT1.'] });
  });

  test('when another performer of the same name was on the track', () => {
    const day = smallDay();
    day.phone.say({ kind: 'voice-described', voice: 'ines2', fields: { part: 'Ines' } });
    const found = sentAfter(day, {
      kind: 'transmitter-worn',
      transmitter: 'A1',
      voice: 'ines2',
      before: day.second,
    });
    expect(found).toEqual({
      letter: 'B',
      changes: [
        // The one rests from 24B on, the other does not.
        'Not settled: Ines gave up a pack and was on no track: 24A/2.',
        'Not settled: Ines gave up a pack and was on no track: 24B/1 FS, 24B/1, WT1.',
        '24A/2: track 3 was Ines, is another Ines.',
      ],
    });
  });

  test('when a third performer of one name joined a gang of two', () => {
    const day = smallDay();
    for (const voice of ['tomas', 'dora'])
      day.phone.say({ kind: 'voice-described', voice, fields: { part: 'Cop' } });
    const { phone, wild } = day;
    expect(reportOf(phone.day()).takes.at(-1)!.tracks[2]!.name).toBe('Cop, Cop');
    phone.say({ kind: 'voice-described', voice: 'cop3', fields: { part: 'Cop' } });
    const { changes } = sentAfter(
      day,
      { kind: 'inputs-sent', routes: [{ input: 'aes3', tracks: ['tr3'] }], before: wild },
      { kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near2', 'near3'], before: wild },
      { kind: 'transmitter-worn', transmitter: 'A3', voice: 'cop3', before: wild },
    );
    expect(changes).toEqual([
      'A line of track 3 added: from WT1: Cop, Cop, Cop (ganged).',
      'WT1: track 3 was Cop, Cop (ganged), is Cop, Cop, Cop (ganged).',
    ]);
  });

  test('when two notes were one before', () => {
    const day = smallDay();
    const note = day.phone.id({ kind: 'note-added', take: day.first, text: 'wind; plane' });
    const { letter, changes } = sentAfter(
      day,
      { kind: 'fact-retracted', targets: [note], by: 'hand' },
      { kind: 'note-added', take: day.first, text: 'wind' },
      { kind: 'note-added', take: day.first, text: 'plane' },
    );
    expect({ letter, changes }).toEqual({
      letter: 'B',
      changes: ['24A/1: notes was “wind; plane”, is “wind” “plane”.'],
    });
  });

  test('when the same frames were counted at another rate', () => {
    const day = smallDay();
    const { changes } = sentAfter(day, {
      kind: 'take-described',
      take: day.first,
      fields: { length: { frames: 250, rate: '24' } },
    });
    expect(changes).toEqual([
      '24A/1: length was 0:10 (250 frames, 10.000 s), is 0:10 (250 frames, 10.416 s).',
    ]);
  });
});

describe('takes', () => {
  test('that bear one slate and number are told apart by their start', () => {
    const day = smallDay();
    day.phone.say(take('24', 1, 1, { start: { frames: 95_000, rate: '25' } }));
    const [, again] = [...day.phone.day().takes.values()].filter(({ number, slate }) => {
      return number === 1 && slate.style === 'lettered' && slate.setup === 1;
    });
    const { changes } = sentAfter(day, {
      kind: 'take-described',
      take: again!.id,
      fields: { circled: true },
    });
    expect(changes).toEqual(['24A/1 (01:03:20:00): status was empty, is circled.']);
  });

  test('are named exactly, by their ids, whatever they are called', () => {
    const day = smallDay();
    day.phone.say(take('24', 1, 1));
    const was = reportOf(day.phone.day());
    day.phone.say({ kind: 'take-described', take: day.first, fields: { circled: true } });
    const found = reportChanges(was, reportOf(day.phone.day()));
    expect(found.map(({ takes }) => takes)).toEqual([[day.first]]);
  });
});

describe('what is gone since the last report', () => {
  test('is called gone: a line of the head, a track, a note, a take', () => {
    const day = smallDay();
    day.phone.say({ kind: 'note-added', take: day.first, text: 'wind' });
    const note = day.phone.facts.at(-1)!.id;
    const { changes } = sentAfter(
      day,
      { kind: 'day-described', fields: { boom: '' } },
      { kind: 'fact-retracted', targets: [note, day.mos], by: 'hand' },
      { kind: 'transmitter-worn', transmitter: 'A2', voice: null, before: day.first },
    );
    expect(changes).toEqual([
      'Boom gone: was Iva Brandt.',
      'Not settled: Dora gave up a pack and was on no track: 24A/1, 24A/2, 24B/1 FS and 2 more.',
      'A line of track 3 gone: was from 24B/1: Tomas, Dora (ganged).',
      'Track 4 gone: was Dora; from 24B/1 FS: Dora (muted); from 24B/1: nobody.',
      '24C/1 MOS gone: was MOS.',
      '24A/1: notes was wind, is empty.',
      '24A/1, 24A/2: track 4 was Dora, is empty.',
      '24B/1 FS: track 4 was Dora (muted), is empty.',
      '24B/1, WT1: track 3 was Tomas, Dora (ganged), is Tomas.',
    ]);
  });
});
