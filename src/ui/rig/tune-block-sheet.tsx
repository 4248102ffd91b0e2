import { useState } from 'preact/hooks';
import { tuneBlock } from '../../commands/lay-rig.ts';
import { pairUp } from '../../commands/plug-run.ts';
import { answersNow } from '../../day/answers.ts';
import { tunedTo } from '../../day/links.ts';
import type { Day } from '../../day/model.ts';
import { useDay, useRun } from '../context.ts';
import { FromWhen } from '../parts/from-when.tsx';
import { Sheet } from '../parts/sheet.tsx';
import { countOf } from '../words/chain.ts';
import { channelsOn } from '../words/rig.ts';
import { asOptions, blocksOf, channelsIn, Pairs } from './block-fields.tsx';
import { SelectField } from './picker.tsx';

/** The first block with a channel that is tuned to nothing, and the pack its first channel has or would get. */
function likely(day: Day, wanted?: string): { block: string; first: string } {
  const { links } = answersNow(day);
  const tuned = (channel: string): string | null => {
    const pack = tunedTo(links, channel)?.value ?? null;
    return pack !== null && day.rig.byId.has(pack) ? pack : null;
  };
  const blocks = blocksOf(day.rig);
  const untuned = blocks.find((block) => channelsIn(day.rig, block).some(({ id }) => tuned(id) === null));
  const block = blocks.find(({ id }) => id === wanted) ?? untuned ?? blocks[0];
  const [channel] = block ? channelsIn(day.rig, block) : [];
  const packs = day.rig.transmitters;
  const loose = packs.find(({ id }) => channelsOn(day.rig, links, id).length === 0);
  return { block: block?.id ?? '', first: (channel && tuned(channel.id)) ?? (loose ?? packs[0])?.id ?? '' };
}

/** A block of channels tuned to a run of packs, one to one, in one action. */
export function TuneBlockSheet({ onClose }: { onClose: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const [before, setBefore] = useState<string | undefined>(undefined);
  const [chosen, setChosen] = useState(() => likely(day));
  const blocks = blocksOf(day.rig);
  const block = blocks.find(({ id }) => id === chosen.block);
  const packs = day.rig.transmitters;
  const from = packs.findIndex(({ id }) => id === chosen.first);
  const { pairs, left } = pairUp(block ? channelsIn(day.rig, block) : [], from < 0 ? [] : packs.slice(from));
  const tune = (): void => {
    const channels = pairs.map(([channel]) => channel.id);
    const onto = pairs.map(([, pack]) => pack.id);
    const done = `${countOf(pairs.length, 'channel')} tuned`;
    if (run(() => tuneBlock(channels, onto, { before }), done)) onClose();
  };
  return (
    <Sheet
      title="Tune a block"
      under="channels to packs, one to one"
      onClose={onClose}
      foot={
        <>
          <FromWhen before={before} onPlace={setBefore} />
          <button
            type="button"
            class="button button-solid rig-do"
            disabled={pairs.length === 0}
            onClick={tune}
          >
            Tune {countOf(pairs.length, 'channel')}
          </button>
        </>
      }
    >
      <div class="section">
        <SelectField
          label="Channels of"
          value={chosen.block}
          options={blocks}
          onChoose={(id) => setChosen(likely(day, id))}
        />
        <SelectField
          label="First pack"
          value={chosen.first}
          options={asOptions(packs)}
          onChoose={(first) => setChosen({ ...chosen, first })}
        />
        <Pairs rig={day.rig} pairs={pairs} left={left} word="to" />
        {packs.length === 0 && <p class="soft">No packs in the rig yet.</p>}
      </div>
    </Sheet>
  );
}
