import { giveTransmitter } from '../../../app/commands/chain.ts';
import { answersBefore } from '../../../day/answers/answers.ts';
import { packsToOffer, voicesToOffer } from '../../../day/answers/pack-offers.ts';
import { wornBy } from '../../../day/chain/links.ts';
import type { PartId, VoiceId } from '../../../day/model.ts';
import { Row } from '../../kit/row.tsx';
import { nameOf, partName } from '../../words/chain.ts';
import { useDay, useRun } from '../context.ts';
import { packOfferWords, voiceOfferWords } from './give-words.ts';

interface GiveProps {
  readonly transmitter: PartId;
  readonly before: string | undefined;
  readonly onDone: () => void;
}

/** Who gets this pack: names with the reason beside them, best first, and "nobody" last. */
export function GiveList({ transmitter, before, onDone }: GiveProps) {
  const day = useDay().day.value;
  const run = useRun();
  const answers = answersBefore(day, before);
  const pack = partName(day.rig, transmitter);
  const wearer = wornBy(answers.links, transmitter)?.value ?? null;
  const give = (to: VoiceId | null): void => {
    const done = `${pack} on ${nameOf(day, to)}`;
    if (run(giveTransmitter(transmitter, to, { before }), done)) onDone();
  };
  const rows = voicesToOffer(answers, transmitter).map((offer) => (
    <li key={offer.voice.voice.id}>
      <Row
        title={nameOf(day, offer.voice.voice.id)}
        word={voiceOfferWords(day, offer)}
        onTap={() => give(offer.voice.voice.id)}
      />
    </li>
  ));
  return (
    <ul class="rows" aria-label={`Give ${pack} to`}>
      {rows}
      {wearer !== null && (
        <li>
          <Row title="nobody" word="take pack off" onTap={() => give(null)} />
        </li>
      )}
    </ul>
  );
}

interface TakeProps {
  readonly voice: VoiceId;
  readonly before: string | undefined;
  readonly onDone: () => void;
}

/** Which pack somebody gets: free ones first. */
export function PackList({ voice, before, onDone }: TakeProps) {
  const day = useDay().day.value;
  const run = useRun();
  const answers = answersBefore(day, before);
  const give = (transmitter: PartId): void => {
    const done = `${partName(day.rig, transmitter)} on ${nameOf(day, voice)}`;
    if (run(giveTransmitter(transmitter, voice, { before }), done)) onDone();
  };
  const offers = packsToOffer(day.rig, answers, voice);
  if (offers.length === 0) return <p class="section soft">No packs in the rig yet. Add them under Rig.</p>;
  return (
    <ul class="rows" aria-label={`Packs for ${nameOf(day, voice)}`}>
      {offers.map((offer) => (
        <li key={offer.transmitter.id}>
          <Row
            title={offer.transmitter.name}
            word={packOfferWords(day, offer)}
            onTap={() => give(offer.transmitter.id)}
          />
        </li>
      ))}
    </ul>
  );
}
