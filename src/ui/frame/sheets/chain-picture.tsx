import type { Answers } from '../../../day/answers/answers.ts';
import type { VoiceAnswer } from '../../../day/answers/voice-answers.ts';
import { breakWords, nameOf } from '../../words/chain.ts';
import { useDay } from '../context.ts';
import { boxPlaces, type ChainBox, chainBoxes } from './chain-boxes.ts';
import './chain-picture.css';

interface PictureProps {
  readonly answers: Answers;
  readonly answer: VoiceAnswer;
}

/** How a voice gets from body to track, as boxes, one picture a pack or lead; broken where the chain breaks. */
export function ChainPictures({ answers, answer }: PictureProps) {
  const day = useDay().day.value;
  return (
    <>
      {answer.paths.map((path) => (
        <figure key={`${path.transmitter}${path.channel}${path.output}${path.lead}`} class="chain">
          <Boxes
            label={`Chain of ${nameOf(day, answer.voice.id)}`}
            boxes={chainBoxes(day, answers, answer, path)}
          />
          {path.broken && <figcaption class="warn">{breakWords(day.rig, path)}</figcaption>}
        </figure>
      ))}
    </>
  );
}

function Boxes({ label, boxes }: { label: string; boxes: readonly ChainBox[] }) {
  const places = boxPlaces(boxes.length);
  return (
    <ol aria-label={label} data-columns={Math.max(...places.map(({ column }) => column))}>
      {boxes.map(({ at, name, word, state, breaksBefore }, n) => {
        const { row, column, from } = places[n]!;
        return (
          <li key={at} data-row={row} data-column={column}>
            {from !== 'none' && <Link from={from} isBroken={breaksBefore} />}
            <span class="chain-box" data-at={at} data-state={state}>
              {breaksBefore && <span class="unseen">the chain breaks here: </span>}
              <strong>{name}</strong>
              {word !== '' && <span>{word}</span>}
            </span>
          </li>
        );
      })}
    </ol>
  );
}

/** The line between two boxes, with a cross in it where the chain breaks. */
const Link = ({ from, isBroken }: { from: string; isBroken: boolean }) => (
  <svg class="chain-link" data-from={from} width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
    {isBroken ? (
      <path
        class="chain-break"
        d="M1 1l10 10M11 1L1 11"
        fill="none"
        stroke="currentColor"
        stroke-width="2.4"
      />
    ) : (
      <path d="M0 6h12" fill="none" stroke="currentColor" stroke-width="2" />
    )}
  </svg>
);
