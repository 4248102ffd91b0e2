import { expect, test } from 'vitest';
import { answersAtTake, answersNow } from '../../src/day/answers/answers.ts';
import { inputsToOffer } from '../../src/day/answers/inputs-to-offer.ts';
import { packsToOffer, voicesToOffer } from '../../src/day/answers/pack-offers.ts';
import type { Day } from '../../src/day/model.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { crowdPhone } from '../plan/crowd-scene.ts';
import { randomDay } from './random-days.ts';

// Who is heard where is read a second time elsewhere (random-days.test.ts). Here is all that is said along with it, as it was:
// every state, how far each way goes and what it breaks at, and by what was said. An answer that is meant to be another is
// looked at, and kept with `npx vitest run --project unit tests/day/kept-answers.test.ts --update`.

type Answers = ReturnType<typeof answersNow>;

/** The answers of one place as text. Facts are told by their places in the day. */
function told(day: Day, { inputs, tracks, voices, summary, roll }: Answers): string[] {
  const places = new Map(day.facts.map(({ id }, at) => [id, at]));
  const by = (because: readonly string[]): string => `by ${because.map((id) => places.get(id)).join(' ')}`;
  const { unrecorded, ...counts } = summary;
  return [
    `  ${Object.values(counts).join(' ')}; missed ${unrecorded.join(' ') || 'nobody'}; roll ${roll || 'none'}`,
    ...inputs
      .filter(({ state }) => state !== 'free')
      .map(({ input, state, reach, because }) => {
        const { arrival, away, selector, muted } = reach;
        const ends = [arrival?.from, away?.from, selector?.position, muted ? 'muted' : ''].map(
          (end) => end ?? '-',
        );
        return `  input ${input.id} ${state} ${ends.join(' ')} to ${reach.tracks.join(' ')} ${by(because)}`;
      }),
    ...tracks
      .filter(({ state }) => state !== 'empty')
      .map(({ track, state, name, typed, heard, because }) => {
        const who = heard.map(({ source, voice, muted }) => `${source.id}=${voice}${muted ? ' muted' : ''}`);
        return `  track ${track.id} ${state} "${name}"${typed ? ' typed' : ''} ${who.join(', ')} ${by(because)}`;
      }),
    ...voices.flatMap(({ voice, state, need, tracks: on, paths }) => [
      `  voice ${voice.id} ${state} ${need} ${on.join(' ')}`,
      ...paths.map(({ because, broken, tracks: to, ...way }) => {
        const links = Object.values(way).map((link) => link ?? '-');
        return `    ${links.join(' ')} to ${to.join(' ') || '-'} ${broken ?? 'whole'} ${by(because)}`;
      }),
    ]),
  ];
}

test('all that random days answer is as it was (seeds 1 to 3 on each ready rig)', async () => {
  const days = ['bag', 'cart', 'modules'].flatMap((rig) =>
    [1, 2, 3].flatMap((seed) => {
      const { day } = randomDay(rig, seed, 12);
      const at = [...day.takeOrder].filter((_, place) => place % 5 === seed);
      return [
        ...at.flatMap((id) => [
          `${rig} ${seed}, take ${day.takeOrder.indexOf(id)}`,
          ...told(day, answersAtTake(day, id)),
        ]),
        `${rig} ${seed}, now`,
        ...told(day, answersNow(day)),
      ];
    }),
  );
  await expect(`${days.join('\n')}\n`).toMatchFileSnapshot('kept/random-days.txt');
});

test('all that a crowd answers, and who is offered what, is as it was (seeds 1 to 3)', async () => {
  const days = ['bag', 'cart', 'modules'].flatMap((rig, at) => {
    const phone = crowdPhone(at + 1, rig, 14);
    const people = [...phone.day().voices.keys()];
    const need = (of: number, said: 'needed' | 'resting' | 'done'): Draft => ({
      kind: 'voices-needed',
      voices: people.filter((_, place) => place % 4 === of).map((voice) => ({ voice, need: said })),
    });
    phone.say(need(0, 'needed'), need(1, 'resting'), need(2, 'done'), { kind: 'roll-changed', roll: '7A' });
    const [pack] = phone.day().rig.transmitters;
    phone.say({ kind: 'mute-set', what: 'transmitter', part: pack!.id, muted: true });
    phone.say({ kind: 'track-named', track: phone.day().rig.tracks.at(-1)!.id, name: 'Crowd' });
    const day = phone.day();
    const answers = answersNow(day);
    const candidates = voicesToOffer(answers, pack!.id).map(
      ({ voice, reason }) => `${voice.voice.id} ${reason}`,
    );
    const packs = packsToOffer(day.rig, answers, people[0]!).map(
      ({ transmitter, wearer, wearerNeed }) => `${transmitter.id} ${wearer} ${wearerNeed}`,
    );
    const inputs = inputsToOffer(answers).map(({ input }) => input.id);
    return [
      `${rig}, crowd`,
      ...told(day, answers),
      `  candidates: ${candidates.join(', ')}`,
      `  packs: ${packs.join(', ')}`,
      `  inputs: ${inputs.join(' ')}`,
    ];
  });
  await expect(`${days.join('\n')}\n`).toMatchFileSnapshot('kept/crowds.txt');
});
