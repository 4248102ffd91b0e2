import { leadFrom, plugRun } from '../../app/commands/chain.ts';
import { answersBefore } from '../../day/answers/answers.ts';
import { OUTPUT_KINDS, type Part, type PartId, type SelectorPosition } from '../../day/model.ts';
import { ownPartsOf } from '../../day/recorders/recorder-parts.ts';
import { recordersOf } from '../../day/recorders/rolling.ts';
import { wordIn } from '../../shared/open-word.ts';
import { useDay, useRun } from '../frame/context.ts';
import { partName } from '../words/chain.ts';
import { OUTPUT_KIND_WORD } from '../words/connectors.ts';
import { nameWithRecorder } from '../words/recorder-names.ts';
import { inputOptions } from './lead-options.ts';
import { Picker } from './picker.tsx';
import { PartChoice } from './whole-day.tsx';
import { reservedWord } from './words.ts';

interface OutputLeadProps {
  readonly output: Part;
  readonly before: string | undefined;
}

/** Which input of each recorder an output is plugged into, and at which selector position. */
export function OutputLead({ output, before }: OutputLeadProps) {
  const day = useDay().day.value;
  if (output.reserved) {
    return (
      <p class="section soft">{`${output.name} is kept for ${reservedWord(output.reserved)}; no voice goes this way.`}</p>
    );
  }
  const all = recordersOf(day);
  const withInputs = all.filter(({ id }) => ownPartsOf(day.rig, id).inputs.length > 0);
  return (withInputs.length > 0 ? withInputs : all.slice(0, 1)).map(({ id, name }) => (
    <LeadTo
      key={id}
      output={output}
      before={before}
      recorder={id}
      at={withInputs.length > 1 ? `On ${name}, ` : ''}
    />
  ));
}

interface LeadToProps extends OutputLeadProps {
  readonly recorder: PartId;
  /** The recorder's name, where several have inputs. */
  readonly at: string;
}

function LeadTo({ output, before, recorder, at: where }: LeadToProps) {
  const day = useDay().day.value;
  const run = useRun();
  const lead = leadFrom(day.rig, answersBefore(day, before).links, output.id, recorder)?.link.value;
  const to = lead?.to && day.rig.byId.has(lead.to) ? lead.to : null;
  const selector = day.rig.selectors.find(({ input }) => input === to);
  const position = selector?.positions?.[lead?.position === 'b' ? 1 : 0];
  const plug = (choice: string): void => {
    const input = choice === 'nothing' ? null : choice.slice(2);
    const at = choice.startsWith('b:') ? 'b' : ('a' as SelectorPosition);
    const done = input ? `${output.name} into ${nameWithRecorder(day, input)}` : `${output.name} unplugged`;
    run(plugRun([output.id], [input], at, { before, recorder }), done);
  };
  return (
    <Picker
      label={`${where}${output.name} (${wordIn(OUTPUT_KIND_WORD, output.outputKind ?? 'analogue')}) goes to`}
      now={to ? [partName(day.rig, to), position].filter(Boolean).join(', ') : 'nothing'}
      options={inputOptions(day, before, output, recorder, to)}
      current={to ? `${selector ? (lead?.position ?? 'a') : 'a'}:${to}` : 'nothing'}
      onPick={plug}
    />
  );
}

export const OutputKindChoice = ({ output }: { output: Part }) => (
  <PartChoice
    part={output}
    label={`Connector of ${output.name}`}
    value={output.outputKind ?? 'analogue'}
    options={OUTPUT_KINDS.map((value) => ({ value, name: OUTPUT_KIND_WORD[value] }))}
    fields={(outputKind) => ({ outputKind })}
  />
);
