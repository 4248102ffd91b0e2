import { giveTransmitter } from '../../../app/commands/chain.ts';
import { answersBefore } from '../../../day/answers/answers.ts';
import { packsToOffer, voicesToOffer } from '../../../day/answers/pack-offers.ts';
import { packReach } from '../../../day/answers/pack-reach.ts';
import { isFoundBy, plain } from '../../../day/cast-in-order.ts';
import { wornBy } from '../../../day/chain/links.ts';
import type { PartId, VoiceId } from '../../../day/model.ts';
import { Button } from '../../kit/button.tsx';
import { nameOf, partName } from '../../words/chain.ts';
import { useDay, useRun } from '../context.ts';
import { packOfferWords, reachWords, voiceOfferWords } from './give-words.ts';
import { OfferList } from './offer-list.tsx';

interface GiveProps {
  readonly transmitter: PartId;
  readonly before: string | undefined;
  readonly onDone: () => void;
}

/** Who gets this pack: names with the reason beside them, best first. */
export function GiveList({ transmitter, before, onDone }: GiveProps) {
  const day = useDay().day.value;
  const run = useRun();
  const answers = answersBefore(day, before);
  const reachOf = packReach(day.rig, answers);
  const pack = partName(day.rig, transmitter);
  const give = (to: VoiceId): void => {
    const done = `${pack} on ${nameOf(day, to)}`;
    if (run(giveTransmitter(transmitter, to, { before }), done)) onDone();
  };
  return (
    <OfferList
      title={`Give ${pack} to`}
      label={`Give ${pack} to`}
      offers={voicesToOffer(answers, transmitter).map((offer) => ({
        id: offer.voice.voice.id,
        name: nameOf(day, offer.voice.voice.id),
        word: voiceOfferWords(day, offer, reachOf),
        isFoundBy: (typed) => isFoundBy(offer.voice.voice, typed),
      }))}
      onTap={give}
    />
  );
}

/** Takes a pack off whoever wears it; nothing if nobody does. */
export function PackOff({ transmitter, before, onDone }: GiveProps) {
  const day = useDay().day.value;
  const run = useRun();
  const pack = partName(day.rig, transmitter);
  if (!wornBy(answersBefore(day, before).links, transmitter)?.value) return null;
  const off = (): void => {
    if (run(giveTransmitter(transmitter, null, { before }), `${pack} off`)) onDone();
  };
  return <Button onClick={off}>Take {pack} off</Button>;
}

interface TakeProps {
  readonly title: string;
  readonly voice: VoiceId;
  readonly before: string | undefined;
  readonly onDone: () => void;
}

/** Which pack somebody gets: free ones first, each with its channel and track. */
export function PackList({ title, voice, before, onDone }: TakeProps) {
  const day = useDay().day.value;
  const run = useRun();
  const answers = answersBefore(day, before);
  const reachOf = packReach(day.rig, answers);
  const give = (transmitter: PartId): void => {
    const done = `${partName(day.rig, transmitter)} on ${nameOf(day, voice)}`;
    if (run(giveTransmitter(transmitter, voice, { before }), done)) onDone();
  };
  const offers = packsToOffer(day.rig, answers, voice);
  if (offers.length === 0) return <p class="section soft">No packs in the rig yet. Add them under Rig.</p>;
  return (
    <OfferList
      title={title}
      label={`Packs for ${nameOf(day, voice)}`}
      offers={offers.map((offer) => ({
        id: offer.transmitter.id,
        name: offer.transmitter.name,
        under: reachWords(day, reachOf(offer.transmitter.id)),
        word: packOfferWords(day, offer),
        isFoundBy: (typed) => plain(offer.transmitter.name).startsWith(plain(typed.trim())),
      }))}
      onTap={give}
    />
  );
}
