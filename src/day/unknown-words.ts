import { SETTLED_AS } from '../facts/kinds/card-checked.ts';
import { NEEDS, SELECTOR_POSITIONS } from '../facts/kinds/chain-changed.ts';
import { CORRECTIONS } from '../facts/kinds/corrected.ts';
import { BIT_DEPTHS, FILE_LAYOUTS, SLATE_STYLES, TIMECODE_RATES } from '../facts/kinds/day-described.ts';
import {
  PART_TYPES,
  type PartFields,
  PLACES,
  RESERVED_USES,
  TAPS,
  WEARS,
} from '../facts/kinds/part-described.ts';
import { BAND_USES, TV_RASTERS } from '../facts/kinds/radio-planned.ts';
import { PAPERS, ROUTES, TABLE_LINES } from '../facts/kinds/report-sent.ts';
import { INPUT_KINDS, OUTPUT_KINDS } from '../facts/kinds/rig-kinds.ts';
import { LEAD_ENDS, RUN_TYPES, SNAKE_SIGNALS } from '../facts/kinds/runs-described.ts';
import { SCENE_STATES } from '../facts/kinds/scenes-described.ts';
import { TAKE_KINDS, UNITS } from '../facts/kinds/take-logged.ts';
import { RUNTIME_BASES } from '../facts/kinds/upkeep-logged.ts';
import { VOICE_KINDS } from '../facts/kinds/voice-described.ts';
import { isOneOf } from '../shared/open-word.ts';
import type { Day, Fact, Take } from './model.ts';

type Worded = readonly [words: readonly string[], word: string | null | undefined];

/**
 * Enum words that only a newer version knows, each once, as they stand on this day. They are kept and shown
 * as unknown, and never computed with as if they were known.
 */
export function unknownWords(day: Day): string[] {
  const { header, upkeep } = day;
  const said: Worded[] = [
    [BIT_DEPTHS, header.bitDepth],
    [TIMECODE_RATES, header.timecodeRate],
    [FILE_LAYOUTS, header.fileLayout],
    [SLATE_STYLES, header.slateStyle],
    [TV_RASTERS, upkeep.guards.tvRaster],
    ...[...day.voices.values()].map(({ kind }): Worded => [VOICE_KINDS, kind]),
    ...[...day.scenes.values()].map(({ state }): Worded => [SCENE_STATES, state]),
    ...[...day.rig.byId.values()].flatMap(saidOfPart),
    ...[...day.takes.values()].flatMap(saidOfTake),
    ...[...upkeep.bands.values()].map(({ use }): Worded => [BAND_USES, use]),
    ...[...upkeep.devices.values()].map(({ runtimeBasis }): Worded => [RUNTIME_BASES, runtimeBasis]),
    ...[...upkeep.runs.values()].map(({ type }): Worded => [RUN_TYPES, type]),
    ...[...upkeep.leads.values()].flatMap(({ ends, carries }): Worded[] => [
      [LEAD_ENDS, ends],
      [SNAKE_SIGNALS, carries],
    ]),
    ...day.facts.flatMap((fact) => (day.takenBack.has(fact.id) ? [] : saidByFact(fact))),
  ];
  const unknown = said.flatMap(([words, word]) => (word && !isOneOf(words, word) ? word : []));
  return [...new Set(unknown)].sort();
}

const saidOfPart = (part: PartFields): Worded[] => [
  [PART_TYPES, part.type],
  [INPUT_KINDS, part.inputKind],
  [TAPS, part.tap],
  [PLACES, part.place],
  [OUTPUT_KINDS, part.outputKind],
  [RESERVED_USES, part.reserved],
  [WEARS, part.wear],
];

const saidOfTake = ({ kind, slate, unit, unreadStart, unreadLength }: Take): Worded[] => [
  [TAKE_KINDS, kind],
  [UNITS, unit],
  [[], slate.style === 'unread' ? slate.said : undefined],
  [[], unreadStart],
  [[], unreadLength],
];

/** Words that are in no list of the day, only in the fact itself. */
function saidByFact(fact: Fact): Worded[] {
  switch (fact.kind) {
    case 'difference-kept':
      return [[SETTLED_AS, fact.as]];
    case 'voices-needed':
      return fact.voices.map(({ need }) => [NEEDS, need]);
    case 'leads-plugged':
      return fact.leads.map(({ position }) => [SELECTOR_POSITIONS, position]);
    case 'selectors-thrown':
      return [[SELECTOR_POSITIONS, fact.position]];
    case 'fact-retracted':
      return [[CORRECTIONS, fact.by]];
    case 'recorder-set':
      return [
        [BIT_DEPTHS, fact.settings.bitDepth],
        [TIMECODE_RATES, fact.settings.timecodeRate],
        [FILE_LAYOUTS, fact.settings.fileLayout],
      ];
    case 'report-sent':
      return [
        [ROUTES, fact.route],
        [PAPERS, fact.made.paper],
        [TABLE_LINES, fact.made.lines],
      ];
    default:
      return [];
  }
}
