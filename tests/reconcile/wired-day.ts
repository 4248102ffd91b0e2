import { reportOf } from '../../src/report/model.ts';
import { speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { type CardFile, cardOf } from './build-card.ts';

/** Takes of ten seconds, a minute apart: Ines on track 3, Dora on 4, the boom on 2, nobody on 5. */
export function wiredDay(
  takes: number,
  between: (at: number, phone: ReturnType<typeof speaker>) => void = () => {},
) {
  const phone = speaker();
  phone.say(...SMALL_RIG);
  phone.say(...SMALL_CAST);
  phone.say({ kind: 'roll-changed', roll: '7A' });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
  const ids = Array.from({ length: takes }, (_, at) => {
    between(at, phone);
    return phone.id(take('24', 1, at + 1, { start: { frames: 900_000 + at * 1500, rate: '25' } }));
  });
  return { phone, ids, day: phone.day, files: cardOf(phone.day()) };
}

export const named = (file: CardFile, channel: number, name: string): CardFile => ({
  ...file,
  tracks: file.tracks.map((track) => (track.channel === channel ? { ...track, name } : track)),
});
export const onTrack = (day: ReturnType<typeof wiredDay>['day'], track: string): (string | undefined)[] =>
  reportOf(day()).takes.map(({ tracks }) => tracks.find((one) => one.track === track)?.name);
