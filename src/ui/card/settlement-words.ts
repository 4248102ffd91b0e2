import type { Day } from '../../day/model.ts';
import { settingsAtTake } from '../../day/settings/settings.ts';
import { takeText } from '../../day/slate.ts';
import type { SettlementChoice } from '../../day/wrap/card-settlement.ts';
import { stemOf } from '../../reconcile/log-and-card/plain-key.ts';
import { countOf, partName } from '../words/chain.ts';

export function settlementWords(day: Day, settlement: SettlementChoice): string {
  const take = (id: string): string => {
    const known = day.takes.get(id);
    return known ? takeText(known) : 'the take';
  };
  switch (settlement.kind) {
    case 'describe-takes':
      return describeWords(day, settlement.takes);
    case 'describe-day':
      return settlement.fields.filePattern === undefined
        ? 'Use the card’s setting'
        : 'Use the card’s file names';
    case 'set-recorder':
      return settlement.changes.length === 1
        ? `Use the card’s setting from ${take(settlement.changes[0]!.before)} on`
        : 'Use the card’s setting, take by take';
    case 'correct-rolling':
      return `It ${settlement.isOn ? 'rolled' : 'did not roll'} on ${settlement.takes.length === 1 ? take(settlement.takes[0]!) : 'them'}`;
    case 'add-note':
      return 'Add the note';
    case 'change-roll':
      return `Roll ${settlement.roll} from ${take(settlement.before)} on`;
    case 'name-track':
      return `Name track ${partName(day.rig, settlement.track)} ${settlement.name}`;
    case 'move-changes':
      return `It changed before ${take(settlement.before)}`;
    case 'log-recording':
      return 'Log it as a take';
    case 'swap-tracks':
      return `${settlement.swap.by === 'packs' ? 'Packs' : 'Inputs'} were swapped from ${take(settlement.take)} on`;
    case 'take-back':
      return 'Remove the take';
    case 'follow-recorder':
      return settlement.takes.length > 0
        ? 'Use the card’s starts, and sync to recorder again'
        : 'Sync to recorder again';
    case 'file-missing':
      return 'File missing';
    case 'keep-log':
      return 'Keep the log';
  }
}

function describeWords(day: Day, takes: (SettlementChoice & { kind: 'describe-takes' })['takes']): string {
  if (takes.length !== 1) return `Use the card for ${countOf(takes.length, 'take')}`;
  const { take, fields } = takes[0]!;
  if (fields.kind === 'mos') return 'It was MOS';
  // For mono files, it is what they have in common.
  if (fields.file)
    return `It is ${settingsAtTake(day, take).fileLayout === 'mono' ? stemOf(fields.file) : fields.file}`;
  return 'Use the card';
}
