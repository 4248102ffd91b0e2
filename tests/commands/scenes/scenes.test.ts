import { describe, expect, test } from 'vitest';
import { readCallSheet } from '../../../src/callsheet/call-sheet.ts';
import { sayWhoIsNeeded } from '../../../src/commands/cast/change-cast.ts';
import type { CommandResult } from '../../../src/commands/command.ts';
import { callSlate } from '../../../src/commands/line/log-takes.ts';
import { undo } from '../../../src/commands/line/undo.ts';
import { addCallSheet, planScenes } from '../../../src/commands/scenes/add-call-sheet.ts';
import {
  addScene,
  castInScene,
  describeScene,
  goToScene,
  markScene,
  moveScene,
} from '../../../src/commands/scenes/change-scenes.ts';
import { answersNow } from '../../../src/day/answers/answers.ts';
import { castOf, notInCast } from '../../../src/day/cast-of-scene.ts';
import { scenesInOrder, scenesToShoot } from '../../../src/day/scenes-in-order.ts';
import { slateText } from '../../../src/day/slate.ts';
import { currentSlate } from '../../../src/day/takes.ts';
import { factWords } from '../../../src/ui/words/facts.ts';
import { type Speaker, speaker, take } from '../../day/say.ts';

const SHEET = [
  'Scene\tSet\tD/N\tPages\tCast',
  '46\tINT. KITCHEN\tD\t2 3/8\t1, 2, 5',
  '47\tEXT. QUAY\tD\t4/8\t2',
  '48\tINT. OFFICE\tN\t1\t1, 9, ATMOS',
  '',
  'No\tCharacter\tArtist',
  '1\tINES\tAnna Berg',
  '2\tTOMAS\tJon Holm',
  '5\tOLD MAN\tPer Dahl',
].join('\n');

function say(phone: Speaker, result: CommandResult): void {
  if (!result.ok) throw new Error(result.problem.code);
  phone.say(...result.value);
}

function ids(): () => string {
  let made = 0;
  return () => {
    made += 1;
    return `id${made}`;
  };
}

function withSheet(sheet = SHEET): Speaker {
  const phone = speaker();
  phone.say({ kind: 'voice-described', voice: 'boom', fields: { kind: 'boom', part: 'Boom' } });
  say(phone, addCallSheet(phone.day(), readCallSheet(sheet), ids()));
  return phone;
}

const scene = (phone: Speaker, number: string) =>
  scenesInOrder(phone.day()).find((one) => one.number === number)!;
const go = (phone: Speaker, number: string) => say(phone, goToScene(phone.day(), scene(phone, number).id));
const needed = (phone: Speaker): string[] =>
  answersNow(phone.day())
    .voices.filter(({ need }) => need === 'needed')
    .map(({ voice }) => voice.part)
    .sort();
const voiceOf = (phone: Speaker, part: string): string =>
  [...phone.day().voices.values()].find((voice) => voice.part === part)!.id;
const byHand = (phone: Speaker, part: string, is: boolean) =>
  say(phone, sayWhoIsNeeded(phone.day(), new Map([[voiceOf(phone, part), is]])));

test('pick-up and on-set times of a sheet are kept, and a later sheet changes only those it has', () => {
  const sheet = (ines: string) =>
    `No\tCharacter\tArtist\tPick up\tOn set\n1\tINES\tAnna Berg\t${ines}\n2\tTOMAS\tJon Holm\t\t09:00`;
  const phone = withSheet(`Scene\tSet\tCast\n46\tINT. KITCHEN\t1, 2\n\n${sheet('06:30\t07:15')}`);
  const times = () =>
    [...phone.day().voices.values()]
      .filter(({ kind }) => kind === 'performer')
      .map(({ number, pickUp, onSet }) => [number, pickUp, onSet]);
  expect(times()).toEqual([
    ['1', '06:30', '07:15'],
    ['2', '', '09:00'],
  ]);
  say(phone, addCallSheet(phone.day(), { scenes: [], cast: readCallSheet(sheet('\t08:00')).cast }, ids()));
  expect(times()).toEqual([
    ['1', '06:30', '08:00'],
    ['2', '', '09:00'],
  ]);
});

describe('adding a call sheet', () => {
  test('puts its scenes in its order, with the people it knows by number', () => {
    const phone = withSheet();
    expect(
      scenesInOrder(phone.day()).map(({ number, set, pages, crowd }) => [number, set, pages, crowd]),
    ).toEqual([
      ['46', 'KITCHEN', '2 3/8', ''],
      ['47', 'QUAY', '4/8', ''],
      ['48', 'OFFICE', '1', 'ATMOS'],
    ]);
    expect(castOf(phone.day(), scene(phone, '46')).map(({ part }) => part)).toEqual([
      'Ines',
      'Tomas',
      'Old Man',
    ]);
    expect(notInCast(phone.day(), scene(phone, '48'))).toEqual(['9']);
  });

  test('a number that the cast gets later is then in the scene', () => {
    const phone = withSheet();
    phone.say({ kind: 'voice-described', voice: 'late', fields: { part: 'Clerk', number: '9' } });
    expect(castOf(phone.day(), scene(phone, '48')).map(({ part }) => part)).toEqual(['Ines', 'Clerk']);
    expect(notInCast(phone.day(), scene(phone, '48'))).toEqual([]);
  });

  test('the same sheet again changes nothing, and a later one orders and updates', () => {
    const phone = withSheet();
    expect(addCallSheet(phone.day(), readCallSheet(SHEET), ids())).toEqual({
      ok: false,
      problem: { code: 'nothing-changed' },
    });
    const later = readCallSheet(
      'Scene\tSet\tD/N\tPages\tCast\n48\tINT. OFFICE\tN\t1 2/8\t1\n50\tEXT. HILL\tD\t1/8\t2',
    );
    expect(planScenes(phone.day(), later.scenes).map(({ does }) => does)).toEqual(['describe', 'add']);
    say(
      phone,
      addCallSheet(phone.day(), later, () => 'new50'),
    );
    expect(scenesInOrder(phone.day()).map(({ number, pages }) => `${number} ${pages}`)).toEqual([
      '48 1 2/8',
      '50 1/8',
      '46 2 3/8',
      '47 4/8',
    ]);
    expect(castOf(phone.day(), scene(phone, '48')).map(({ part }) => part)).toEqual(['Ines']);
  });

  test('one scene in two strips is one scene with the people of both', () => {
    const phone = withSheet(`${SHEET}\n\nScene\tSet\tD/N\tPages\tCast\n47\tEXT. QUAY\tD\t1/8\t5`);
    expect(scenesInOrder(phone.day())).toHaveLength(3);
    expect(castOf(phone.day(), scene(phone, '47')).map(({ part }) => part)).toEqual(['Tomas', 'Old Man']);
  });

  test('scenes by the names of parts find their people too', () => {
    const phone = withSheet(
      'SCENE | SET | D/N | PAGES | CHARACTERS\n10 | INT. ATTIC | DAY | 1/8 | INES, THE SWEEP\n\nCharacter | Artist\nINES | Anna Berg\nTHE SWEEP | Odd Moe',
    );
    expect(
      castOf(phone.day(), scene(phone, '10'))
        .map(({ part }) => part)
        .sort(),
    ).toEqual(['Ines', 'The Sweep']);
  });
});

describe('who is needed follows the slate', () => {
  test('to those in the scene; others of the list rest, and the reason is said', () => {
    const phone = withSheet();
    go(phone, '46');
    expect(slateText(currentSlate(phone.day()))).toBe('46');
    expect(needed(phone)).toEqual(['Ines', 'Old Man', 'Tomas']);
    const fact = phone.day().facts.at(-1)!;
    expect(factWords(phone.day(), fact)).toBe('scene 46: 1, 2, 5');
    go(phone, '47');
    expect(needed(phone)).toEqual(['Tomas']);
  });

  test('one undo takes back the slate and the need together', () => {
    const phone = withSheet();
    go(phone, '46');
    say(phone, undo(phone.day(), 'phonea'));
    expect(needed(phone)).toEqual([]);
    expect(slateText(currentSlate(phone.day()))).not.toBe('46');
  });

  test('what was said by hand stays within the scene, and when the slate comes back to it', () => {
    const phone = withSheet();
    go(phone, '46');
    byHand(phone, 'Tomas', false);
    say(phone, callSlate(phone.day()));
    expect(slateText(currentSlate(phone.day()))).toBe('46A');
    expect(needed(phone)).toEqual(['Ines', 'Old Man']);
    go(phone, '47');
    expect(needed(phone)).toEqual(['Tomas']);
    go(phone, '46');
    expect(needed(phone)).toEqual(['Ines', 'Old Man']);
  });

  test('somebody in no scene keeps what was said of them', () => {
    const phone = withSheet();
    byHand(phone, 'Boom', true);
    go(phone, '46');
    go(phone, '47');
    expect(needed(phone)).toEqual(['Boom', 'Tomas']);
  });

  test('somebody done for the day is not called back', () => {
    const phone = withSheet();
    go(phone, '47');
    phone.say({ kind: 'voices-needed', voices: [{ voice: voiceOf(phone, 'Ines'), need: 'done' }] });
    go(phone, '46');
    expect(needed(phone)).toEqual(['Old Man', 'Tomas']);
  });

  test('a slate of no scene on the list changes nobody, and a day without scenes says nothing more', () => {
    const phone = withSheet();
    go(phone, '46');
    const before = phone.facts.length;
    say(phone, callSlate(phone.day(), { style: 'lettered', scene: '99', setup: 0 }));
    expect(phone.facts.length).toBe(before + 1);
    expect(callSlate(speaker().day(), { style: 'lettered', scene: '1', setup: 0 })).toMatchObject({
      value: [{ kind: 'slate-called' }],
    });
  });

  test('a slate put before an earlier take says who was needed there, and what comes after follows', () => {
    const phone = withSheet();
    go(phone, '47');
    const first = phone.id(take('47', 0, 1));
    say(phone, callSlate(phone.day(), { style: 'lettered', scene: '46', setup: 0 }, { before: first }));
    const placed = phone.facts.filter((fact) => fact.before === first).map(({ kind }) => kind);
    expect(placed).toEqual(['slate-called', 'voices-needed']);
  });

  test('a numbered slate goes by its scene', () => {
    const phone = withSheet();
    phone.say({ kind: 'day-described', fields: { slateStyle: 'numbered' } });
    go(phone, '48');
    expect(currentSlate(phone.day())).toMatchObject({ style: 'numbered', scene: '48' });
    expect(needed(phone)).toEqual(['Ines']);
  });
});

describe('changing a scene', () => {
  test('done and moved ones are not to shoot', () => {
    const phone = withSheet();
    say(phone, markScene(phone.day(), scene(phone, '46').id, 'done'));
    say(phone, markScene(phone.day(), scene(phone, '47').id, 'moved'));
    expect(scenesToShoot(phone.day()).map(({ number }) => number)).toEqual(['48']);
    expect(markScene(phone.day(), scene(phone, '46').id, 'done')).toMatchObject({
      problem: { code: 'nothing-changed' },
    });
  });

  test('a state that only a newer version knows is still to shoot', () => {
    const phone = withSheet();
    phone.say({
      kind: 'scenes-described',
      scenes: [{ scene: scene(phone, '46').id, fields: { state: 'half-done' as never } }],
    });
    expect(scenesToShoot(phone.day())).toHaveLength(3);
  });

  test('the order moves by places, and stops at the ends', () => {
    const phone = withSheet();
    say(phone, moveScene(phone.day(), scene(phone, '48').id, -1));
    expect(scenesInOrder(phone.day()).map(({ number }) => number)).toEqual(['46', '48', '47']);
    expect(moveScene(phone.day(), scene(phone, '46').id, -1)).toMatchObject({
      problem: { code: 'nothing-changed' },
    });
  });

  test('people come in and go out, those by number too', () => {
    const phone = withSheet();
    const id = scene(phone, '46').id;
    say(phone, castInScene(phone.day(), id, voiceOf(phone, 'Tomas'), false));
    say(phone, castInScene(phone.day(), id, voiceOf(phone, 'Boom'), true));
    expect(castOf(phone.day(), scene(phone, '46')).map(({ part }) => part)).toEqual([
      'Ines',
      'Old Man',
      'Boom',
    ]);
  });

  test('a scene is added by its number, once', () => {
    const phone = withSheet();
    say(phone, addScene(phone.day(), ' 46B ', 'new'));
    expect(scenesInOrder(phone.day()).at(-1)?.number).toBe('46B');
    expect(addScene(phone.day(), '46b', 'x')).toMatchObject({ problem: { code: 'scene-twice' } });
    expect(addScene(phone.day(), ' ', 'x')).toMatchObject({ problem: { code: 'scene-number' } });
    expect(describeScene(phone.day(), 'new', { number: '47' })).toMatchObject({
      problem: { code: 'scene-twice' },
    });
    expect(describeScene(phone.day(), 'nobody', {})).toMatchObject({ problem: { code: 'not-on-this-day' } });
  });

  test('its next slate is the first that has no take', () => {
    const phone = withSheet();
    go(phone, '46');
    phone.say(take('46', 0, 1));
    go(phone, '47');
    go(phone, '46');
    expect(slateText(currentSlate(phone.day()))).toBe('46A');
  });
});
