import { describe, expect, test } from 'vitest';
import { answersNow } from '../../../src/day/answers/answers.ts';
import { packsToOffer, voicesToOffer } from '../../../src/day/answers/pack-offers.ts';
import type { Need } from '../../../src/day/model.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { type Speaker, speaker } from '../say.ts';
import { SMALL_CAST, SMALL_RIG } from '../small-rig.ts';

const need = (said: Record<string, Need>): Draft => ({
  kind: 'voices-needed',
  voices: Object.entries(said).map(([voice, one]) => ({ voice, need: one })),
});
const worn = (transmitter: string, voice: string | null): Draft => ({
  kind: 'transmitter-worn',
  transmitter,
  voice,
});
function wired(...more: Draft[]): Speaker {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST, ...more);
  return phone;
}
const candidates = (phone: Speaker, pack = 'A3') =>
  voicesToOffer(answersNow(phone.day()), pack).map(({ voice, reason }) => `${voice.voice.id} ${reason}`);
const offers = (phone: Speaker, voice: string) =>
  packsToOffer(phone.day().rig, answersNow(phone.day()), voice).map(
    ({ transmitter, wearer, wearerNeed }) => `${transmitter.id} ${wearer} ${wearerNeed}`,
  );

describe('who may get a pack', () => {
  test('is every performer but who wears it, the most important first, and no boom', () => {
    expect(candidates(wired())).toEqual(['ines wears-nothing', 'dora wears-nothing', 'tomas wears-nothing']);
    expect(candidates(wired(worn('A3', 'ines')))).toEqual(['dora wears-nothing', 'tomas wears-nothing']);
  });

  test('comes by how pressing it is', () => {
    const phone = wired(
      need({ ines: 'done', dora: 'resting', tomas: 'needed' }),
      { kind: 'voice-described', voice: 'ada', fields: { part: 'Ada', priority: 1 } },
      { kind: 'voice-described', voice: 'eva', fields: { part: 'Eva', priority: 9 } },
      worn('A1', 'ada'),
    );
    expect(candidates(phone)).toEqual([
      'tomas needed-unrecorded',
      'eva wears-nothing',
      'ada recorded',
      'dora resting',
      'ines done',
    ]);
  });

  test('says of who is needed whether they are muted, clash or share', () => {
    const two = [
      worn('A1', 'ines'),
      worn('A2', 'dora'),
      need({ ines: 'needed', dora: 'needed', tomas: 'needed' }),
    ];
    const together: Draft = { kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr3'] }] };
    expect(candidates(wired(...two, together))).toEqual([
      'tomas needed-unrecorded',
      'ines needed-clash',
      'dora needed-clash',
    ]);
    const gang: Draft = { kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near2'] };
    expect(candidates(wired(...two, together, gang))).toEqual([
      'tomas needed-unrecorded',
      'ines needed-ganged',
      'dora needed-ganged',
    ]);
    const muted: Draft = { kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true };
    expect(candidates(wired(...two, muted))).toEqual([
      'tomas needed-unrecorded',
      'ines needed-muted',
      'dora recorded',
    ]);
  });
});

describe('packs for somebody', () => {
  test('are those on nobody first, then from whoever can best spare one, and never the own', () => {
    const phone = wired(
      { kind: 'part-described', part: 'A4', fields: { type: 'transmitter', name: 'A4', order: 40 } },
      { kind: 'part-described', part: 'A5', fields: { type: 'transmitter', name: 'A5', order: 41 } },
      { kind: 'part-described', part: 'A6', fields: { type: 'transmitter', name: 'A6', order: 42 } },
      { kind: 'voice-described', voice: 'ada', fields: { part: 'Ada' } },
      { kind: 'voice-described', voice: 'eva', fields: { part: 'Eva' } },
      worn('A1', 'ines'),
      worn('A2', 'dora'),
      worn('A3', 'tomas'),
      worn('A4', 'ada'),
      worn('A6', 'eva'),
      need({ ines: 'needed', dora: 'resting', tomas: 'done' }),
    );
    expect(offers(phone, 'eva')).toEqual([
      'A5 null null',
      'A3 tomas done',
      'A2 dora resting',
      'A4 ada null',
      'A1 ines needed',
    ]);
    expect(offers(phone, 'tomas').map((one) => one.split(' ')[0])).toEqual(['A5', 'A2', 'A4', 'A6', 'A1']);
  });

  test('alike come in the order of the rig', () => {
    const phone = wired({ kind: 'part-described', part: 'A1', fields: { order: 99 } });
    expect(offers(phone, 'ines').map((one) => one.split(' ')[0])).toEqual(['A2', 'A3', 'A1']);
  });
});
