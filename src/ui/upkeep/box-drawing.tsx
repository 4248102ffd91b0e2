import { RESERVED_USES } from '../../day/model.ts';
import { wordOf } from '../../shared/open-word.ts';
import { inputName } from '../../upkeep/wiring/wiring-sheet.ts';
import { listOf } from '../words/chain.ts';
import type { BoxLeads, BoxLine } from './box-leads.ts';
import './box-drawing.css';

/** A receiver's outputs, their leads and the inputs they end at, each a box; dashed if nothing is plugged. */
export function BoxDrawing({ box, under }: { box: BoxLeads; under?: string }) {
  const { receiver, lines } = box;
  return (
    <figure class="box-leads">
      <figcaption>
        <strong>{receiver.name}</strong>
        {under && <span class="soft"> {under}</span>}
      </figcaption>
      <ul>
        {lines.map(({ output, lead }) => (
          <LeadLine key={`${output.id}${lead?.id}`} output={output} lead={lead} />
        ))}
      </ul>
    </figure>
  );
}

function LeadLine({ output, lead }: BoxLine) {
  if (!lead)
    return (
      <li class="box-line">
        <span class="box-end" data-spare={!output.reserved}>
          {output.name}
        </span>
        <span class="box-spare">
          {output.reserved ? `kept for ${wordOf(RESERVED_USES, output.reserved)}` : 'spare'}
        </span>
      </li>
    );
  const { selector, isThrough, thrownTo } = lead;
  return (
    <li class="box-line">
      <span class="box-end">{output.name}</span>
      <span class="box-lead">
        <span>
          <span class="unseen">by </span>lead {lead.lead}
        </span>
        <svg width="100%" height="14" aria-hidden="true">
          <line x1="0" x2="100%" y1="7" y2="7" class={isThrough ? 'box-through' : 'box-away'} />
          {selector && (
            <svg x="50%" overflow="visible" aria-hidden="true">
              <path d={isThrough ? THROWN : AWAY} class="box-switch" />
            </svg>
          )}
        </svg>
        {selector && (
          <span class="soft">
            {selector.name} at {thrownTo}
            {!isThrough && <span class="unseen">, not at {selector.position}</span>}
          </span>
        )}
      </span>
      <span class="box-end">
        <span class="unseen">to </span>
        {inputName(lead)}
      </span>
    </li>
  );
}

/** A switch that is closed, and one that is thrown to the other lead. */
const THROWN = 'M-9 7h18M-9 4v6M9 4v6';
const AWAY = 'M-9 7l14 -7M-9 4v6M9 4v6';

/** The inputs that could take a spare output. */
export const SpareInputs = ({ inputs }: { inputs: readonly string[] }) => (
  <p class="section soft">
    {inputs.length === 0 ? 'No input is spare.' : `Spare inputs: ${listOf(inputs)}.`}
  </p>
);
