import type { ComponentChildren } from 'preact';
import type {
  How,
  PlannedEntry,
  PlannedScene,
  SeasonPerformer,
  SeasonSheet,
  SheetScene,
} from '../../../app/commands/call-sheet.ts';
import { Button } from '../../kit/button.tsx';
import { Row } from '../../kit/row.tsx';
import { countOf } from '../../words/chain.ts';
import { pagesWords } from '../../words/scenes.ts';
import { Guess } from './guess.tsx';
import type { Mending } from './mend-form.tsx';
import { OtherLines } from './other-lines.tsx';
import { carriedWords, isGuessed, plannedSceneWord, plannedWord } from './words.ts';

interface ReadingProps {
  readonly people: readonly PlannedEntry<SeasonPerformer>[];
  readonly scenes: readonly PlannedScene[];
  readonly sheet: SeasonSheet;
  /** Whether guessed parts and performers are swapped. */
  readonly turned: boolean;
  /** Missing if nothing was guessed. */
  readonly onTurn: ((turned: boolean) => void) | undefined;
  readonly onMend: (mending: Mending) => void;
}

/** What was read, what was guessed, and what could not be read; a tap on a row mends it. */
export function Reading({ people, scenes, sheet, turned, onTurn, onMend }: ReadingProps) {
  const { unread, aside, headings } = sheet;
  const read = people.length + scenes.length;
  if (read + unread.length + aside.length + headings.length === 0) return null;
  const guessed = [...sheet.cast, ...sheet.scenes].filter(isGuessed).length;
  return (
    <>
      <p class="section-title soft" role="status">
        <b>{read}</b> read{guessed > 0 && `, ${guessed} of them with a guess`} ·{' '}
        <b class={unread.length > 0 ? 'warn' : ''}>{unread.length}</b> not read
        {aside.length > 0 && ` · ${countOf(aside.length, 'line')} set aside`}
      </p>
      {guessed > 0 && <p class="section soft">What is marked ? was guessed. Tap a row to change it.</p>}
      {onTurn && (
        <div class="section-title">
          <Button pressed={turned} onClick={() => onTurn(!turned)}>
            Swap part and name in the guesses
          </Button>
        </div>
      )}
      <OtherLines name="Not read" lines={unread} onMend={onMend} />
      {scenes.length > 0 && <h3 class="section-title">Scenes</h3>}
      <ul class="rows cast-rows" aria-label="Scenes read">
        {scenes.map((planned, at) => (
          <li key={sheet.scenes[at]!.lines[0]}>
            <SceneRead planned={planned} scene={sheet.scenes[at]!} onMend={onMend} />
          </li>
        ))}
      </ul>
      {people.length > 0 && scenes.length > 0 && <h3 class="section-title">Cast</h3>}
      <ul class="rows cast-rows" aria-label="Read">
        {people.map((planned) => (
          <li key={planned.entry.line}>
            <PerformerRead planned={planned} onMend={onMend} />
          </li>
        ))}
      </ul>
      <OtherLines name="Set aside" lines={aside} onMend={onMend} />
    </>
  );
}

interface PerformerReadProps {
  readonly planned: PlannedEntry<SeasonPerformer>;
  readonly onMend: (mending: Mending) => void;
}

function PerformerRead({ planned, onMend }: PerformerReadProps) {
  const { entry } = planned;
  const { number, part, person, pickUp, onSet, how } = entry;
  const times = [
    pickUp !== '' && <Guess key="pickUp" how={how.pickUp}>{`pick-up ${pickUp}`}</Guess>,
    onSet !== '' && <Guess key="onSet" how={how.onSet}>{`on set ${onSet}`}</Guess>,
  ];
  const named = part ? person || 'no performer named' : 'no part named';
  return (
    <Row
      number={number}
      title={<Guess how={part ? how.part : how.person}>{part || person}</Guess>}
      under={joined([
        <Guess key="person" how={part && person ? how.person : undefined}>
          {named}
        </Guess>,
        carriedWords(entry),
        ...times,
      ])}
      word={
        <>
          {planned.twice && <strong>number twice</strong>}
          {plannedWord(planned)}
        </>
      }
      onTap={() => onMend({ line: entry.line, text: '', performer: entry })}
    />
  );
}

interface SceneReadProps {
  readonly planned: PlannedScene;
  readonly scene: SheetScene;
  readonly onMend: (mending: Mending) => void;
}

function SceneRead({ planned, scene, onMend }: SceneReadProps) {
  const { number, intExt, set, dayNight, pages, cast, crowd, how } = scene;
  const cell = (text: string, found: How | undefined, name: string) =>
    text !== '' && (
      <Guess key={name} how={found}>
        {text}
      </Guess>
    );
  return (
    <Row
      number={number}
      title={joined([cell(intExt, how.intExt, 'intExt'), cell(set, how.set, 'set')], ' ')}
      under={joined([
        cell(dayNight, how.dayNight, 'dayNight'),
        cell(pagesWords(pages), how.pages, 'pages'),
        cell(cast.length > 0 ? `cast ${cast.join(', ')}` : '', how.cast, 'cast'),
        cell(crowd, how.crowd, 'crowd'),
      ])}
      word={
        <>
          {how.number === 'guessed' && <strong>number guessed</strong>}
          {planned.twice && <strong>number twice</strong>}
          {plannedSceneWord(planned)}
        </>
      }
      onTap={() => onMend({ line: scene.lines[0]!, text: '', scene })}
    />
  );
}

const joined = (parts: readonly ComponentChildren[], between = ' · '): ComponentChildren[] =>
  parts.filter(Boolean).flatMap((part, at) => (at === 0 ? [part] : [between, part]));
