import { markOccupied, setGuards } from '../../app/commands/radio.ts';
import type { TvRaster } from '../../day/model.ts';
import { neighbourhoodOf } from '../../radio/day/day-ranges.ts';
import { tvChannel, tvChannelsIn } from '../../radio/day/tv-channels.ts';
import { useDay, useRun } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { Button } from '../kit/button.tsx';
import { Choice } from '../kit/field.tsx';
import { rangeWords } from './words.ts';

const idOf = (raster: TvRaster, channel: number): string => `tv-${raster}-${channel}`;

/** The TV channels around the packs: a tap marks one as in use here, another unmarks it. */
export function TvChannels({ raster }: { raster: TvRaster | undefined }) {
  const day = useDay().day.value;
  const run = useRun();
  const around = neighbourhoodOf(day);
  const channels = raster && around ? tvChannelsIn(raster, around.fromKhz, around.toKhz + 1) : [];
  const toggle = (which: TvRaster, channel: number, inUse: boolean): void => {
    const block = tvChannel(which, channel);
    if (!block.ok) {
      complain(block.problem);
      return;
    }
    const id = idOf(which, channel);
    run(
      markOccupied(id, block.value, !inUse),
      inUse ? `TV ${channel} is free` : `TV ${channel} is in use here`,
    );
  };
  return (
    <div class="section">
      <Choice
        label="TV channels here are"
        value={raster ?? ''}
        options={[
          { value: 'us', name: '6 MHz wide' },
          { value: 'uhf-8-mhz', name: '8 MHz wide' },
        ]}
        onChoose={(value) => run(setGuards({ tvRaster: value as TvRaster }), 'TV channel width saved')}
      />
      {raster && channels.length > 0 && (
        <>
          <p class="soft" id="tv-channels">
            Tap those in use here; they are avoided. {around && rangeWords(around.fromKhz, around.toKhz)} MHz.
          </p>
          <div class="buttons radio-channels" role="group" aria-labelledby="tv-channels">
            {channels.map((channel) => {
              const band = day.upkeep.bands.get(idOf(raster, channel));
              const inUse = band !== undefined && !band.struck;
              return (
                <Button key={channel} pressed={inUse} onClick={() => toggle(raster, channel, inUse)}>
                  <span>
                    <span class="unseen">TV </span>
                    {channel}
                  </span>
                  <span class="soft">{inUse ? 'in use' : 'free'}</span>
                </Button>
              );
            })}
          </div>
        </>
      )}
      {raster && !around && <p class="soft">Type a frequency or a range to see the channels around it.</p>}
    </div>
  );
}
