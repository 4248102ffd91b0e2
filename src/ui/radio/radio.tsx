import { useState } from 'preact/hooks';
import { formatMhz } from '../../app/commands/typed.ts';
import type { DayPlan } from '../../radio/day/day-plan.ts';
import { rangesOf } from '../../radio/day/day-ranges.ts';
import { hitCount } from '../../radio/day/named-hits.ts';
import type { Analysis } from '../../radio/intermodulation/analysis.ts';
import { useDay } from '../frame/context.ts';
import { Page } from '../frame/page/page.tsx';
import { Cautions } from '../frame/prep/caution-notes.tsx';
import { PrepTop } from '../frame/prep/prep-top.tsx';
import { usePlan } from '../frame/prep/use-plan.ts';
import { Button } from '../kit/button.tsx';
import { Row } from '../kit/row.tsx';
import { Section } from '../kit/section.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { countOf, nameOf } from '../words/chain.ts';
import { sentenceFor } from '../words/problems.ts';
import { CarrierSheet } from './carrier-sheet.tsx';
import { GuardsForm } from './guards-form.tsx';
import { Hits } from './hits.tsx';
import { TvChannels } from './occupied.tsx';
import { PackList } from './pack-list.tsx';
import { PackRadioSheet } from './pack-radio-sheet.tsx';
import { BandForm } from './range-form.tsx';
import { SetSheet } from './set-sheet.tsx';
import { Spectrum } from './spectrum.tsx';
import { guardsWords, rangeWords } from './words.ts';
import './radio.css';
import '../frame/prep/print.css';

type Open =
  | { readonly pack: string }
  | { readonly carrier: string | undefined }
  | { readonly band: string | undefined; readonly use: 'tunable' | 'occupied' }
  | 'set'
  | null;

const OTHER = /^other:/;

/** The frequency plan: hits, then the packs with their frequencies, and all it is computed from. */
export function Radio() {
  const day = useDay().day.value;
  const { plan, result } = usePlan();
  const [open, setOpen] = useState<Open>(null);
  const close = (): void => setOpen(null);
  const analysis = result.ok ? result.value : undefined;
  const show = (id: string): void =>
    setOpen(OTHER.test(id) ? { carrier: id.replace(OTHER, '') } : { pack: id });
  const pack =
    open && typeof open === 'object' && 'pack' in open && plan.all.find(({ id }) => id === open.pack);
  return (
    <Page
      tab="radio"
      foot={<RadioFoot onSet={() => setOpen('set')} onAdd={() => setOpen({ carrier: undefined })} />}
    >
      <PrepTop title="Radio">{analysis && <PlanState plan={plan} analysis={analysis} />}</PrepTop>
      {!result.ok && <p class="problem">{sentenceFor(result.problem)}</p>}
      {analysis && analysis.carriers.length > 0 && (
        <Spectrum
          analysis={analysis}
          label={pictureWords(analysis)}
          wearerOf={(id) => {
            const voice = plan.all.find((one) => one.id === id)?.voice;
            return voice ? nameOf(day, voice) : undefined;
          }}
        />
      )}
      {analysis && <Hits analysis={analysis} plan={plan} onPack={show} />}
      {plan.all.some(({ type }) => type === 'pack') ? (
        <PackList plan={plan} analysis={analysis} onPack={show} />
      ) : (
        <p class="section">No packs in the rig yet. Add them under Rig, then type their frequencies here.</p>
      )}
      <Others plan={plan} onCarrier={(carrier) => setOpen({ carrier })} />
      <Section name="Minimum spacing" under={guardsWords(plan.guards)}>
        <GuardsForm guards={plan.guards} />
      </Section>
      <Section name="Where packs tune" under={countOf(rangesOf(day).length, 'range')}>
        <ul class="rows">
          {rangesOf(day).map(({ id, group, fromKhz, toKhz, rasterKhz }) => (
            <li key={id}>
              <Row
                title={group || 'all packs'}
                under={`${rangeWords(fromKhz, toKhz)} MHz, every ${rasterKhz} kHz`}
                onTap={() => setOpen({ band: id, use: 'tunable' })}
              />
            </li>
          ))}
        </ul>
        <Button look="bare" class="prep-more" onClick={() => setOpen({ band: undefined, use: 'tunable' })}>
          Add a range
        </Button>
      </Section>
      <Section
        name="Spectrum in use here"
        under={plan.occupied.map(({ name }) => name).join(', ') || 'not set'}
      >
        <TvChannels raster={plan.raster} />
        <Stretches onStretch={(band) => setOpen({ band, use: 'occupied' })} />
        <Cautions of={['bands']} />
      </Section>
      {pack && <PackRadioSheet pack={pack} plan={plan} analysis={analysis} onClose={close} />}
      {open === 'set' && <SetSheet plan={plan} onClose={close} />}
      {open && typeof open === 'object' && 'carrier' in open && (
        <CarrierSheet id={open.carrier} onClose={close} />
      )}
      {open && typeof open === 'object' && 'use' in open && (
        <Sheet title={open.use === 'tunable' ? 'Where packs tune' : 'In use here'} onClose={close}>
          <BandForm id={open.band} use={open.use} onDone={close} />
        </Sheet>
      )}
    </Page>
  );
}

function PlanState({ plan, analysis }: { plan: DayPlan; analysis: Analysis }) {
  const { hits, edges } = hitCount(analysis);
  const onAir = plan.carriers.filter(({ transmitting }) => transmitting).length;
  const without = plan.all.filter(({ khz, type }) => type === 'pack' && khz === null).length;
  return (
    <>
      {hits > 0 && <span class="warn">{countOf(hits, 'hit')} · </span>}
      {edges > 0 && <span class="warn">{edges} in spectrum in use · </span>}
      <b>{onAir}</b> on the air{hits + edges === 0 && onAir > 1 && ' · no hit'}
      {without > 0 && (
        <>
          {' · '}
          <b>{without}</b> without a frequency
        </>
      )}
    </>
  );
}

function pictureWords(analysis: Analysis): string {
  const khz = analysis.carriers.map((carrier) => carrier.khz);
  const { hits } = hitCount(analysis);
  return `${countOf(khz.length, 'carrier')} between ${formatMhz(Math.min(...khz))} and ${formatMhz(Math.max(...khz))} MHz, ${countOf(hits, 'hit')}. The list below says the same.`;
}

function Others({ plan, onCarrier }: { plan: DayPlan; onCarrier: (id: string) => void }) {
  const others = plan.all.filter(({ type }) => type === 'other');
  if (others.length === 0) return null;
  return (
    <ul class="rows">
      {others.map(({ id, name, khz, heard, spacingKhz, problem }) => (
        <li key={id}>
          <Row
            mark={heard ? 'single' : 'idle'}
            title={name}
            under={[
              heard ? 'received here' : 'only transmits',
              spacingKhz ? `own spacing ${spacingKhz} kHz` : '',
            ]
              .filter(Boolean)
              .join(' · ')}
            word={problem ? sentenceFor(problem) : khz === null ? 'no frequency' : `${formatMhz(khz)} MHz`}
            onTap={() => onCarrier(id.replace(OTHER, ''))}
          />
        </li>
      ))}
    </ul>
  );
}

/** Ranges typed by hand; TV channels have their own buttons. */
function Stretches({ onStretch }: { onStretch: (id: string | undefined) => void }) {
  const day = useDay().day.value;
  const typed = [...day.upkeep.bands].filter(
    ([id, { use, struck }]) => use === 'occupied' && !struck && !id.startsWith('tv-'),
  );
  return (
    <>
      <ul class="rows">
        {typed.map(([id, { name, fromKhz = 0, toKhz = 0 }]) => (
          <li key={id}>
            <Row title={name} under={`${rangeWords(fromKhz, toKhz)} MHz`} onTap={() => onStretch(id)} />
          </li>
        ))}
      </ul>
      <Button look="bare" class="prep-more" onClick={() => onStretch(undefined)}>
        Add a range in use
      </Button>
    </>
  );
}

const RadioFoot = ({ onSet, onAdd }: { onSet: () => void; onAdd: () => void }) => (
  <div class="prep-foot">
    <Button onClick={onAdd}>Another carrier</Button>
    <Button look="solid" onClick={onSet}>
      Frequencies for several packs
    </Button>
  </div>
);
