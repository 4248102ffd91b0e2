import { saidOfLink } from '../../day/chain/said-of-link.ts';
import {
  type Day,
  type Fact,
  type FactOf,
  type PartId,
  type Pins,
  SELECTOR_POSITIONS,
  type SelectorPosition,
} from '../../day/model.ts';
import { recordersOf } from '../../day/recorders/rolling.ts';
import type { SaidSettings } from '../../day/settings/settings.ts';
import { slateText, takeText } from '../../day/slate.ts';
import { takeFrom } from '../../day/takes.ts';
import { isOneOf, type Open, unknownText, wordIn } from '../../shared/open-word.ts';
import { formatTimecode } from '../../time/timecode.ts';
import { countOf, listOf, nameOf, partName } from './chain.ts';
import { mountedWords } from './mics.ts';
import { NEED_WORD } from './needs.ts';
import { holderWords } from './phones.ts';
import { prepWords } from './prep-facts.ts';
import { nameWithRecorder, recorderName, trackWithRecorder } from './recorder-names.ts';
import { bitDepthWords, rateWords, sampleRateWords } from './recording.ts';
import { sceneNeedWords, scenesWords } from './scenes.ts';

/** A fact in trade terms, in one line. */
export function factWords(day: Day, fact: Fact): string {
  const part = (id: string | null | undefined): string => partName(day.rig, id);
  switch (fact.kind) {
    case 'transmitter-worn':
      return fact.voice
        ? `${part(fact.transmitter)} on ${nameOf(day, fact.voice)}`
        : `${part(fact.transmitter)} taken off`;
    case 'mic-mounted':
      return mountedWords(day, fact);
    case 'channels-tuned':
      return fact.tunings.length === 1
        ? `${part(fact.tunings[0]!.channel)} tuned to ${part(fact.tunings[0]!.transmitter) || 'nothing'}`
        : `${fact.tunings.length} receiver channels tuned`;
    case 'leads-plugged':
      return leadsWords(day, fact.leads);
    case 'selectors-thrown':
      return `${listOf(fact.selectors.map(part))} to ${positionName(day, fact.selectors[0]!, fact.position)}`;
    case 'inputs-sent':
      return fact.routes.length === 1
        ? `${nameWithRecorder(day, fact.routes[0]!.input)} to track ${listOf(fact.routes[0]!.tracks.map(part)) || 'none'}`
        : `${fact.routes.length} inputs sent to tracks`;
    case 'mute-set':
      return `${fact.what === 'input' ? nameWithRecorder(day, fact.part) : part(fact.part)} ${fact.muted ? 'muted' : 'unmuted'}`;
    case 'gang-declared':
      return fact.sources.length > 0
        ? `${listOf(fact.sources.map((id) => sourceName(day, id)))} ganged on track ${part(fact.track)}`
        : `no gang on track ${part(fact.track)} any more`;
    case 'gang-ended':
      return `${listOf(fact.sources.map((id) => sourceName(day, id)))} not ganged on track ${part(fact.track)} any more`;
    case 'track-named':
      return fact.name
        ? `track ${part(fact.track)} named ${fact.name} by hand`
        : `track ${part(fact.track)} named automatically`;
    case 'voices-needed':
      if (fact.scene !== undefined) return sceneNeedWords(day, fact.scene);
      return `${listOf(fact.voices.map(({ voice }) => nameOf(day, voice)))} ${wordIn(NEED_WORD, fact.voices[0]!.need)}`;
    case 'voice-pinned':
      return fact.pins
        ? `${nameOf(day, fact.voice)} pinned: ${listOf(pinWords(day, fact.pins, fact.recorder))}`
        : `${nameOf(day, fact.voice)} not pinned${fact.recorder ? ` on ${recorderName(day, fact.recorder)}` : ''} any more`;
    case 'out-marked':
      return `${sourceName(day, fact.part)} ${fact.out ? 'out of order' : 'working again'}`;
    case 'moves-weighed':
      return 'what to avoid changed';
    case 'roll-changed':
      return fact.recorder ? `roll ${fact.roll} in ${partName(day.rig, fact.recorder)}` : `roll ${fact.roll}`;
    case 'recorders-rolling':
      return `${listOf(
        recordersOf(day)
          .filter(({ id }) => fact.recorders.includes(id))
          .map(({ name }) => name),
      )} rolling`;
    case 'recorder-set':
      return settingsWords(fact.settings) + recorderWords(day, fact.recorder);
    case 'slate-called':
      return `slate ${slateText(fact.slate)}`;
    case 'rig-laid':
      return `rig: ${countOf(fact.parts.length, 'part')}`;
    case 'clock-followed':
      return `clock synced to ${formatTimecode(fact.frames, fact.rate)}${fact.heard ? ' by ear' : ''}`;
    case 'voice-described':
      return `${nameOf(day, fact.voice)} edited`;
    case 'part-described':
      return `${part(fact.part)} edited`;
    case 'day-described':
      return 'day details edited';
    case 'take-logged':
      return takeText(takeFrom(fact));
    case 'take-described':
    case 'note-added':
      return 'take';
    case 'report-sent':
      return `report ${fact.letter} sent: ${countOf(fact.files.length, 'file')}`;
    case 'fact-retracted':
      return `${countOf(fact.targets.length, 'entry', 'entries')} removed`;
    case 'fact-moved':
      return 'moved on the line';
    case 'conflict-resolved':
      return resolvedWords(day, fact);
    case 'takes-joined':
      return 'two takes are one';
    case 'scenes-described':
      return scenesWords(day, fact);
    case 'card-checked':
      return `card checked: ${countOf(fact.files, 'file')}`;
    case 'difference-kept':
      return `${settledWords(fact.as)}${fact.file ? `: ${fact.file}` : ''}`;
    case 'handed-over':
      return `${listOf(fact.carriers.map(({ name }) => name))} handed over to ${fact.to}`;
    case 'phone-named':
      return `phone of ${holderWords(fact)}`;
    case 'writer-admitted':
      return `phone of ${holderWords(fact)} joined`;
    case 'writer-removed':
      return 'a phone removed from the day';
    case 'day-passed-on':
      return 'day handed over to another phone';
    case 'move-ticked':
      return fact.ticked ? 'a move ticked' : 'a tick removed';
    case 'day-wrapped':
      return fact.wrapped ? 'day wrapped' : 'day reopened';
    default:
      return prepWords(day, fact);
  }
}

function settledWords(as: FactOf<'difference-kept'>['as'] = 'log'): string {
  if (as === 'file-missing') return 'file missing on the card';
  return as === 'card' ? 'as on the card' : 'log kept against the card';
}

/** Named where it is not the first one. */
const recorderWords = (day: Day, recorder: PartId | undefined): string =>
  recorder !== undefined && day.rig.byId.has(recorder) ? ` on ${partName(day.rig, recorder)}` : '';

const LAYOUTS = { poly: 'one file of all tracks', mono: 'one file a track' };

/** `'23.976 fps and 96 kHz'`; a pattern of file names stands as it is. */
function settingsWords({
  timecodeRate,
  sampleRate,
  bitDepth,
  fileLayout,
  filePattern,
}: SaidSettings): string {
  return listOf([
    ...(timecodeRate ? [rateWords(timecodeRate)] : []),
    ...(sampleRate ? [sampleRateWords(sampleRate)] : []),
    ...(bitDepth ? [bitDepthWords(bitDepth)] : []),
    ...(fileLayout ? [wordIn(LAYOUTS, fileLayout)] : []),
    ...(filePattern ? [`file names ${filePattern}`] : []),
  ]);
}

function resolvedWords(day: Day, { link, among, stands }: FactOf<'conflict-resolved'>): string {
  const wordsOf = (id: string): string => {
    const fact = day.facts.find((one) => one.id === id);
    return fact ? factWords(day, { ...fact, ...saidOfLink(fact, link) } as Fact) : 'something else';
  };
  return stands ? `resolved: ${wordsOf(stands)}` : `one after the other: ${listOf(among.map(wordsOf))}`;
}

type SaidLead = { readonly from: string | null; readonly to: string | null };

function leadsWords(day: Day, leads: readonly SaidLead[]): string {
  if (leads.length === 1) return leadWords(day, leads[0]!);
  const plugged = leads.filter(({ to }) => to !== null);
  return plugged.length > 0 ? `${plugged.length} leads patched` : `${leads.length} leads unplugged`;
}

function leadWords(day: Day, lead: SaidLead): string {
  const from = lead.from && day.voices.has(lead.from) ? nameOf(day, lead.from) : partName(day.rig, lead.from);
  return lead.to
    ? `${from || 'a lead'} into ${nameWithRecorder(day, lead.to)}`
    : `${from || 'a lead'} unplugged`;
}

/** A receiver channel, or whoever is on a hardline. */
export const sourceName = (day: Day, source: string): string =>
  day.voices.has(source) ? nameOf(day, source) : partName(day.rig, source);

export const positionName = (day: Day, selector: string, position: Open<SelectorPosition>): string =>
  isOneOf(SELECTOR_POSITIONS, position)
    ? (day.rig.byId.get(selector)?.positions?.[position === 'a' ? 0 : 1] ?? position.toUpperCase())
    : unknownText(position);

/** What a voice keeps whatever is planned, on one recorder or the main one, each thing by itself. */
export function pinWords(day: Day, pins: Pins, recorder?: PartId): string[] {
  const { transmitter, channel, input, track, alone } = pins;
  const on = (words: string): string => (recorder ? `${words} on ${recorderName(day, recorder)}` : words);
  return [
    ...(transmitter ? [partName(day.rig, transmitter)] : []),
    ...(channel ? [on(partName(day.rig, channel))] : []),
    ...(input ? [nameWithRecorder(day, input)] : []),
    ...(track ? [trackWithRecorder(day, track)] : []),
    ...(alone ? [on('alone')] : []),
  ];
}
