import { PART_TYPES, type PartId } from '../../day/model.ts';
import { isOneOf } from '../../shared/open-word.ts';
import { ChannelSheet } from './channel-sheet.tsx';
import { InputSheet } from './input-sheet.tsx';
import { PackSheet, SendSheet } from './pack-sheet.tsx';
import { OutputSheet, ReceiverSheet } from './receiver-sheet.tsx';
import { SelectorSheet } from './selector-sheet.tsx';
import { TrackPartSheet } from './track-part-sheet.tsx';
import { usePart } from './whole-day.tsx';

const SHEETS = {
  input: InputSheet,
  track: TrackPartSheet,
  receiver: ReceiverSheet,
  channel: ChannelSheet,
  output: OutputSheet,
  selector: SelectorSheet,
  transmitter: PackSheet,
  send: SendSheet,
  recorder: SendSheet,
};

/** What can be adjusted on one part of the rig; nothing once it is removed. */
export function PartSheet({ id, onClose }: { id: PartId; onClose: () => void }) {
  const part = usePart(id);
  if (!part || !isOneOf(PART_TYPES, part.type)) return null;
  const Shown = SHEETS[part.type];
  return <Shown part={part} onClose={onClose} />;
}
