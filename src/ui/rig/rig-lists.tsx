import { formatMhz } from '../../app/commands/typed.ts';
import type { Answers } from '../../day/answers/answers.ts';
import { packReach } from '../../day/answers/pack-reach.ts';
import { wornBy } from '../../day/chain/links.ts';
import { type Day, type Part, type PartId, TAPS, WEARS } from '../../day/model.ts';
import { ownPartsOf } from '../../day/recorders/recorder-parts.ts';
import { wordOf } from '../../shared/open-word.ts';
import { reachWords } from '../frame/sheets/give-words.ts';
import type { MarkState } from '../kit/mark.tsx';
import { Row } from '../kit/row.tsx';
import { Section } from '../kit/section.tsx';
import { countOf, nameOf, partName } from '../words/chain.ts';
import { positionName } from '../words/facts.ts';
import { runWords } from '../words/number-runs.ts';
import { bankOf, bankWords } from './selector-sheet.tsx';
import { arrivalWords, inputStateWords, inputsWords, inputWords } from './words.ts';

export interface ListProps {
  readonly day: Day;
  readonly answers: Answers;
  readonly onPart: (part: PartId) => void;
}

export interface RecorderListProps extends ListProps {
  readonly recorder: PartId;
  /** Its name, where several recorders have such lists. */
  readonly of: string | undefined;
}

/** The answers about some parts, in the order of the parts. */
const answersOn = <Answer,>(
  parts: readonly Part[],
  answers: readonly Answer[],
  partOf: (answer: Answer) => Part,
): Answer[] => {
  const ids = new Set(parts.map(({ id }) => id));
  return answers.filter((answer) => ids.has(partOf(answer).id));
};

export function Inputs({ day, answers, onPart, recorder, of }: RecorderListProps) {
  const inputs = answersOn(ownPartsOf(day.rig, recorder).inputs, answers.inputs, ({ input }) => input);
  if (inputs.length === 0) return null;
  const free = inputs.filter(({ state }) => state === 'free').length;
  return (
    <Section
      name="Inputs"
      of={of}
      under={inputsWords(inputs.map(({ input }) => input))}
      word={`${free} free`}
    >
      <ul class="rows rows-two">
        {inputs.map((answer) => (
          <li key={answer.input.id}>
            <Row
              mark={answer.state}
              title={answer.input.name}
              under={inputWords(day, answer)}
              word={inputStateWords(answer)}
              onTap={() => onPart(answer.input.id)}
            />
          </li>
        ))}
      </ul>
    </Section>
  );
}

export function Tracks({ day, answers, onPart, recorder, of }: RecorderListProps) {
  const tracks = answersOn(ownPartsOf(day.rig, recorder).tracks, answers.tracks, ({ track }) => track);
  if (tracks.length === 0) return null;
  const isos = tracks.filter(({ state }) => state !== 'mix');
  const used = isos.filter(({ state }) => state !== 'empty').length;
  return (
    <Section
      name="Tracks"
      of={of}
      under={`${tracks.length - isos.length} mix, ${isos.length} iso`}
      word={`${used} in use`}
    >
      <ul class="rows rows-two">
        {tracks.map(({ track, state, name }) => {
          const fed = answers.inputs.filter(({ reach }) => reach.tracks.includes(track.id));
          const by = runWords(fed.map(({ input }) => input.name));
          const mark: MarkState = state === 'empty' ? (fed.length > 0 ? 'idle' : 'free') : state;
          return (
            <li key={track.id}>
              <Row
                mark={mark}
                title={track.mix ? track.name : `Track ${track.name}${name ? `, ${name}` : ''}`}
                under={track.mix ? 'every input' : by || 'no input feeds it'}
                word={`${track.mix ? 'mix' : 'iso'}, ${wordOf(TAPS, track.tap ?? 'pre')}`}
                onTap={() => onPart(track.id)}
              />
            </li>
          );
        })}
      </ul>
    </Section>
  );
}

export function Selectors({ day, answers, onPart, onBank }: ListProps & { onBank: (bank: string) => void }) {
  const { selectors } = day.rig;
  if (selectors.length === 0) return null;
  const banks = [...new Set(selectors.map(({ bank }) => bank ?? ''))];
  const reachOf = new Map(answers.inputs.map(({ input, reach }) => [input.id, reach]));
  return (
    <Section name="Selectors" under={bankWords(day, selectors)} word={String(selectors.length)}>
      {banks.map((bank) => (
        <ul class="rows" key={bank}>
          <li>
            <Row
              title={`All of ${bank || 'them'}`}
              under={bankWords(day, bankOf(day, bank))}
              word="throw all"
              onTap={() => onBank(bank)}
            />
          </li>
          {bankOf(day, bank).map((selector) => {
            const reach = reachOf.get(selector.input ?? '');
            return (
              <li key={selector.id}>
                <Row
                  title={selector.name}
                  under={`${partName(day.rig, selector.input)}: ${arrivalWords(day, reach?.arrival ?? null)}`}
                  word={positionName(day, selector.id, reach?.selector?.position ?? 'a')}
                  onTap={() => onPart(selector.id)}
                />
              </li>
            );
          })}
        </ul>
      ))}
    </Section>
  );
}

export function Packs({ day, answers, onPart }: ListProps) {
  const { transmitters } = day.rig;
  if (transmitters.length === 0) return null;
  const { links } = answers;
  const reachOf = packReach(day.rig, answers);
  const wearer = (id: string): string | null => wornBy(links, id)?.value ?? null;
  const worn = transmitters.filter(({ id }) => wearer(id) !== null).length;
  return (
    <Section
      name="Packs"
      under={runWords(transmitters.map(({ name }) => name))}
      word={`${worn} of ${transmitters.length} worn`}
    >
      <ul class="rows rows-two">
        {transmitters.map(({ id, name, khz, wear }) => (
          <li key={id}>
            <Row
              mark={wearer(id) ? 'single' : 'idle'}
              title={name}
              under={[
                khz ? `${formatMhz(khz)} MHz` : '',
                reachWords(day, reachOf(id)),
                wear && wear !== 'pack' ? wordOf(WEARS, wear) : '',
              ]
                .filter(Boolean)
                .join(' · ')}
              word={nameOf(day, wearer(id))}
              onTap={() => onPart(id)}
            />
          </li>
        ))}
      </ul>
    </Section>
  );
}

export function Sends({ day, onPart, recorder, of }: RecorderListProps) {
  const { sends } = ownPartsOf(day.rig, recorder);
  if (sends.length === 0) return null;
  return (
    <Section
      name="Sends"
      of={of}
      under={sends.map(({ name }) => name).join(', ')}
      word={countOf(sends.length, 'send')}
    >
      <ul class="rows">
        {sends.map(({ id, name, reserved }) => (
          <li key={id}>
            <Row title={name} word={reserved ?? ''} onTap={() => onPart(id)} />
          </li>
        ))}
      </ul>
    </Section>
  );
}
