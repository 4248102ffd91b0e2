import { leadFrom } from '../../app/commands/chain.ts';
import { tunedTo } from '../../day/chain/links.ts';
import type { Part } from '../../day/model.ts';
import { wordIn } from '../../shared/open-word.ts';
import { Row } from '../kit/row.tsx';
import { Section } from '../kit/section.tsx';
import { countOf, partName } from '../words/chain.ts';
import { OUTPUT_KIND_WORD } from '../words/connectors.ts';
import type { ListProps } from './rig-lists.tsx';
import { reservedWord } from './words.ts';

const PLACE_WORD = { cart: 'on the cart', bag: 'in the bag', remote: 'remote box' } as const;

export function Receivers(props: ListProps) {
  const { receivers, channels } = props.day.rig;
  if (receivers.length === 0) return null;
  return (
    <Section
      name="Receivers"
      under={receivers.map(({ name }) => name).join(', ')}
      word={countOf(channels.length, 'channel')}
    >
      {receivers.map((receiver) => (
        <Receiver key={receiver.id} {...props} receiver={receiver} />
      ))}
    </Section>
  );
}

function Receiver({ receiver, ...props }: ListProps & { receiver: Part }) {
  const { rig } = props.day;
  const own = rig.channels.filter((channel) => channel.receiver === receiver.id);
  const modules = [...new Set(own.map(({ module }) => module ?? ''))];
  const spare = rig.outputs.filter((output) => output.receiver === receiver.id && !output.carries?.length);
  return (
    <>
      <div class="rig-receiver">
        <Row
          title={receiver.name}
          under={`${wordIn(PLACE_WORD, receiver.place ?? 'cart')}, ${countOf(own.length, 'channel')}`}
          word={<span class="rig-show">change</span>}
          onTap={() => props.onPart(receiver.id)}
        />
      </div>
      {modules.map((module) => (
        <div key={module} role="group" aria-label={module || receiver.name}>
          {modules.length > 1 && <p class="rig-module soft">{module || 'no module'}</p>}
          <ul class="rows rows-two">
            {own
              .filter((channel) => (channel.module ?? '') === module)
              .map((channel) => (
                <li key={channel.id}>
                  <ChannelRow {...props} channel={channel} />
                </li>
              ))}
          </ul>
        </div>
      ))}
      <ul class="rows">
        {spare.map(({ id, name, reserved }) => (
          <li key={id}>
            <Row
              mark={reserved ? 'reserved' : 'free'}
              title={name}
              under="output without a channel"
              word={reserved ?? ''}
              onTap={() => props.onPart(id)}
            />
          </li>
        ))}
      </ul>
    </>
  );
}

function ChannelRow({ day, answers, onPart, channel }: ListProps & { channel: Part }) {
  const tuned = partName(day.rig, existing(day.rig.byId, tunedTo(answers.links, channel.id)?.value));
  const outputs = day.rig.outputs.filter(({ carries }) => carries?.includes(channel.id));
  const ways = outputs.map((output) => {
    const to = existing(day.rig.byId, leadFrom(day.rig, answers.links, output.id)?.link.value.to);
    const kind = wordIn(OUTPUT_KIND_WORD, output.outputKind ?? 'analogue');
    if (output.reserved) return `${kind}, kept for ${reservedWord(output.reserved)}`;
    return `${kind} › ${to ? partName(day.rig, to) : 'no lead'}`;
  });
  return (
    <Row
      title={channel.name}
      under={ways.join(' + ') || 'no output'}
      word={tuned || 'not tuned'}
      onTap={() => onPart(channel.id)}
    />
  );
}

const existing = (byId: ReadonlyMap<string, Part>, id: string | null | undefined): string | null =>
  id && byId.has(id) ? id : null;
