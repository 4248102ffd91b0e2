import type { Answers } from '../../../day/answers/answers.ts';
import type { Break, Path, VoiceAnswer } from '../../../day/answers/voice-answers.ts';
import { mutedAt, thrownTo } from '../../../day/chain/links.ts';
import { type Day, type PartId, TAPS, VOICE_KINDS, WEARS } from '../../../day/model.ts';
import { wordIn, wordOf } from '../../../shared/open-word.ts';
import { listOf, nameOf, partName, VOICE_WORD } from '../../words/chain.ts';
import { INPUT_KIND_WORD, OUTPUT_KIND_WORD } from '../../words/connectors.ts';
import { positionName } from '../../words/facts.ts';
import { nameWithRecorder } from '../../words/recorder-names.ts';

/** One station on the way from a body to a track. */
export interface ChainBox {
  readonly at: 'body' | 'pack' | 'channel' | 'output' | 'selector' | 'input' | 'track';
  readonly name: string;
  /** What it is, or what is wrong with it. */
  readonly word: string;
  readonly state: 'whole' | 'muted' | 'missing';
  /** The chain breaks between the box before and this one. */
  readonly breaksBefore: boolean;
}

const box = (at: ChainBox['at'], name: string, word: string): ChainBox => ({
  at,
  name,
  word,
  state: 'whole',
  breaksBefore: false,
});

/** What is missing where a chain breaks; for the others, the box after the break is there and says why. */
const MISSING: Partial<Record<Break, readonly [at: ChainBox['at'], name: string]>> = {
  'no-transmitter': ['pack', 'no pack'],
  'pack-gone': ['pack', 'no pack'],
  'no-channel': ['channel', 'no channel'],
  'no-output': ['output', 'no output'],
  'no-lead': ['input', 'no lead'],
  'lead-hangs': ['input', 'loose lead'],
  'no-track': ['track', 'no track'],
};

/** The chain of one path, box by box: to its tracks, or to where it breaks. */
export function chainBoxes(day: Day, answers: Answers, answer: VoiceAnswer, path: Path): ChainBox[] {
  const { links } = answers;
  const { rig } = day;
  const part = (id: PartId | null) => (id ? rig.byId.get(id) : undefined);
  const muted = (id: PartId, made: ChainBox): ChainBox =>
    mutedAt(links, id)?.value ? { ...made, word: 'muted', state: 'muted' } : made;
  const boxes = [box('body', nameOf(day, answer.voice.id), bodyWord(answer))];
  const { transmitter, channel, output, selector, input, broken } = path;
  if (transmitter) {
    const word = wordOf(WEARS, part(transmitter)?.wear ?? 'pack');
    boxes.push(muted(transmitter, box('pack', partName(rig, transmitter), word)));
  }
  if (channel) boxes.push(box('channel', partName(rig, channel), 'channel'));
  if (output) {
    const kind = wordIn(OUTPUT_KIND_WORD, part(output)?.outputKind ?? 'analogue');
    boxes.push(box('output', partName(rig, output), kind));
  }
  if (selector) {
    const position = thrownTo(links, selector)?.value ?? 'a';
    boxes.push(box('selector', partName(rig, selector), `at ${positionName(day, selector, position)}`));
  }
  if (input) {
    const kind = `${wordIn(INPUT_KIND_WORD, part(input)?.inputKind ?? 'mic')} input`;
    const isBreak = broken === 'pushed-out' || broken === 'switched-away';
    const word = broken === 'pushed-out' ? 'another lead' : kind;
    const made = muted(input, box('input', nameWithRecorder(day, input), word));
    boxes.push({ ...made, breaksBefore: isBreak });
  }
  const missing = broken ? MISSING[broken] : undefined;
  if (missing) boxes.push({ ...box(missing[0], missing[1], ''), state: 'missing', breaksBefore: true });
  if (path.tracks.length > 0) boxes.push(trackBox(day, answer, path));
  return merged(boxes);
}

const bodyWord = ({ voice }: VoiceAnswer): string =>
  voice.kind === 'performer' ? 'body' : wordOf(VOICE_KINDS, voice.kind);

function trackBox(day: Day, answer: VoiceAnswer, { tracks }: Path): ChainBox {
  const { rig } = day;
  const there = tracks.filter((id) => rig.byId.has(id));
  const names = listOf(there.map((id) => nameWithRecorder(day, id)));
  const tap = wordOf(TAPS, rig.byId.get(there[0] ?? '')?.tap ?? 'pre');
  const shared = answer.state === 'gang' || answer.state === 'clash' ? VOICE_WORD[answer.state] : '';
  return box('track', `track ${names}`, shared || `iso, ${tap}-fader`);
}

/** A channel and the output that it leaves by often share a name, and a slot all three: they are one box. */
function merged(boxes: readonly ChainBox[]): ChainBox[] {
  const out: ChainBox[] = [];
  for (const one of boxes) {
    const last = out.at(-1);
    if (last?.name !== one.name || one.at === 'track' || one.breaksBefore || last.at === 'body')
      out.push(one);
    else out[out.length - 1] = { ...one, word: one.at === 'output' ? `${last.word}, ${one.word}` : one.word };
  }
  return out;
}

export interface BoxPlace {
  readonly row: number;
  readonly column: number;
  /** The side by which it is linked to the box before. */
  readonly from: 'none' | 'start' | 'top' | 'end';
}

const WIDEST = 4;

/** Boxes in rows there and back, like a cable laid in bends: four to a row, or three if that fills two rows. */
export function boxPlaces(count: number): BoxPlace[] {
  const columns = count <= WIDEST ? count : count <= 6 ? 3 : WIDEST;
  return Array.from({ length: count }, (_, at) => {
    const row = Math.floor(at / columns) + 1;
    const along = at % columns;
    const isBack = row % 2 === 0;
    const from = at === 0 ? 'none' : along === 0 ? 'top' : isBack ? 'end' : 'start';
    return { row, column: isBack ? columns - along : along + 1, from };
  });
}
