import { answersAtTake } from '../../day/answers/answers.ts';
import { fileNamesOn } from '../../day/files/file-name.ts';
import { workingHeader } from '../../day/header.ts';
import type { Day, PartId, Take } from '../../day/model.ts';
import { recordersOf, rollOn } from '../../day/recorders/rolling.ts';
import { slateText, takeText } from '../../day/slate.ts';
import { takesInOrder } from '../../day/takes.ts';
import { rateOf } from '../../time/rate.ts';
import { framesToSamples } from '../../time/samples.ts';
import { type WrittenWave, writeWave } from '../../wave/file/write-wave.ts';
import type { ByteSource } from '../../wave/riff/header-reader.ts';

// What differs between the log of the sample day and its card.

/** The recorder's card was never told to circle this one. */
const NOT_CIRCLED = '45/2';
/** The recorder still had the name of who wore the pack before. */
const OLD_NAME = { take: '45A/1', channel: 15, name: 'Emil' };
/** Its file is not there. */
const MISSING = '45A/2';
/** Nobody logged it. */
const UNLOGGED = { name: '14C_WT02.wav', afterTake: '45B/2', seconds: 41, note: 'Owl over the siding' };

/** What the recorders of the sample day would have on their cards: headers without sound, a few of them not as logged. */
export function sampleCard(day: Day): ByteSource[] {
  const waves = cardAsLogged(day)
    .filter(({ text }) => text !== MISSING)
    .map(({ text, wave }) => {
      if (text === NOT_CIRCLED) return withSaid(wave, 'CIRCLED', 'FALSE');
      return text === OLD_NAME.take ? withOldName(wave) : wave;
    });
  return [...waves, ...unlogged(day)].map(writeWave);
}

/** What the recorders write that agrees with the log in everything, one recorder after another. */
export function cardAsLogged(day: Day): { readonly text: string; readonly wave: WrittenWave }[] {
  return recordersOf(day).flatMap(({ id: recorder }) => {
    const names = fileNamesOn(day, recorder);
    return takesInOrder(day).flatMap((take) => {
      const name = names.get(take.id);
      if (!name || take.kind === 'mos' || !take.start || !take.length) return [];
      return [{ text: takeText(take), wave: waveOf(day, take, recorder, name) }];
    });
  });
}

function waveOf(day: Day, take: Take, recorder: PartId, name: string): WrittenWave {
  const { timecodeRate, sampleRate, bitDepth, production, date } = workingHeader(day, '25');
  const { num, den, dropped } = rateOf(timecodeRate);
  const tracks = answersAtTake(day, take.id).recorders.find((one) => one.recorder === recorder)?.tracks ?? [];
  const { start, length } = take;
  return {
    name,
    sampleRate,
    bits: Number.parseInt(bitDepth, 10),
    date: dateOf(day, take) ?? date,
    start: start ? framesToSamples(start.frames, sampleRate, start.rate).samples : 0,
    length: length ? framesToSamples(length.frames, sampleRate, length.rate).samples : 0,
    said: [
      ['PROJECT', production],
      ['SCENE', take.kind === 'wild' ? 'WT' : take.kind === 'tone' ? 'RT' : slateText(take.slate)],
      ['TAKE', String(take.number)],
      ['TAPE', rollOn(day, take.id, recorder)],
      ['CIRCLED', take.circled ? 'TRUE' : 'FALSE'],
      ['TAKE_TYPE', typesOf(take).join(',') || 'DEFAULT'],
      ['NOTE', take.notes.find(({ track }) => track === undefined)?.text ?? ''],
    ],
    speed: [
      ['TIMECODE_RATE', `${num}/${den}`],
      ['TIMECODE_FLAG', dropped > 0 ? 'DF' : 'NDF'],
    ],
    tracks: tracks.flatMap(({ name: heard, state, track }, at) =>
      state === 'empty' ? [] : [{ channel: at + 1, name: heard, mix: track.mix === true }],
    ),
  };
}

/** A night goes on after midnight. */
function dateOf({ facts }: Day, { rolledAt }: Take): string | undefined {
  const zone = facts[0]?.zone ?? 0;
  return rolledAt === undefined
    ? undefined
    : new Date(rolledAt + zone * 60_000).toISOString().slice(0, 'yyyy-mm-dd'.length);
}

const typesOf = ({ falseStart, kind }: Take): string[] => [
  ...(falseStart ? ['FALSE_START'] : []),
  ...(kind === 'wild' ? ['WILD_TRACK'] : []),
  ...(kind === 'pickup' ? ['PICKUP'] : []),
];

const withSaid = (wave: WrittenWave, field: string, value: string): WrittenWave => ({
  ...wave,
  said: wave.said.map((one) => (one[0] === field ? [field, value] : one)),
});

const withOldName = (wave: WrittenWave): WrittenWave => ({
  ...wave,
  tracks: wave.tracks.map((track) =>
    track.channel === OLD_NAME.channel ? { ...track, name: OLD_NAME.name } : track,
  ),
});

/** A wild track two minutes after the last take; none once it is in the log. */
function unlogged(day: Day): WrittenWave[] {
  const as = cardAsLogged(day);
  const after = as.find(({ text }) => text === UNLOGGED.afterTake)?.wave;
  if (!after || as.some(({ wave }) => wave.name === UNLOGGED.name)) return [];
  const wave = {
    ...after,
    name: UNLOGGED.name,
    start: after.start + after.length + 120 * after.sampleRate,
    length: UNLOGGED.seconds * after.sampleRate,
  };
  const said = { SCENE: 'WT', TAKE: '2', CIRCLED: 'FALSE', TAKE_TYPE: 'WILD_TRACK', NOTE: UNLOGGED.note };
  return [
    Object.entries(said).reduce(
      (written, [field, value]) => withSaid(written, field, value),
      wave as WrittenWave,
    ),
  ];
}
