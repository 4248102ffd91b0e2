import { useSignal } from '@preact/signals';
import { useState } from 'preact/hooks';
import { sayWhoIsNeeded } from '../../app/commands/cast.ts';
import { answersNow } from '../../day/answers/answers.ts';
import { isHeard, type VoiceAnswer } from '../../day/answers/voice-answers.ts';
import { castInOrder, isFoundBy } from '../../day/cast-in-order.ts';
import type { VoiceId } from '../../day/model.ts';
import { sceneOfSlate } from '../../day/scenes-in-order.ts';
import { slateText } from '../../day/slate.ts';
import { currentSlate } from '../../day/takes.ts';
import { wordIn } from '../../shared/open-word.ts';
import { useDatabase, useDay } from '../frame/context.ts';
import { Page } from '../frame/page/page.tsx';
import { Button } from '../kit/button.tsx';
import { NEED_WORD } from '../words/needs.ts';
import { sceneNeedWords } from '../words/scenes.ts';
import { stateWords } from '../words/voice.ts';
import { Found } from './found.tsx';
import { useFocus } from './use-focus.ts';
import { useLeaving, useRunOnLeaving } from './use-leaving.ts';
import { VoiceName } from './voice-row.tsx';
import { chainWords } from './words.ts';

type Wanted = ReadonlyMap<VoiceId, boolean>;
const AS_IT_WAS: Wanted = new Map();

/** Who is needed in this setup: one tap each, saved as one action on Done or on leaving. */
export function NeedList({ onEnd }: { onEnd: () => void }) {
  const store = useDay();
  const run = useRunOnLeaving();
  const database = useDatabase();
  const wanted = useSignal(AS_IT_WAS);
  const [typed, setTyped] = useState('');
  const day = store.day.value;
  const answers = new Map(answersNow(day).voices.map((answer) => [answer.voice.id, answer]));
  const slate = currentSlate(day, database);
  const scene = sceneOfSlate(day, slate);
  const cast = castInOrder(day).map(({ id }) => answers.get(id)!);
  const isWanted = ({ voice, need }: VoiceAnswer): boolean => wanted.value.get(voice.id) ?? need === 'needed';
  const needed = cast.filter(isWanted);
  const shown = cast.filter(({ voice }) => isFoundBy(voice, typed));

  const want = (all: readonly VoiceAnswer[], is: boolean): void => {
    wanted.value = new Map([...wanted.value, ...all.map(({ voice }) => [voice.id, is] as const)]);
  };
  const leave = (): void => {
    const tapped = wanted.peek();
    wanted.value = AS_IT_WAS;
    run(sayWhoIsNeeded(tapped), `${needed.length || 'Nobody'} needed`);
  };
  useLeaving(leave);

  return (
    <Page
      tab="cast"
      foot={
        <NeedFoot
          needed={needed}
          changed={wanted.value.size > 0}
          onUndo={() => {
            wanted.value = AS_IT_WAS;
            onEnd();
          }}
          onDone={onEnd}
        />
      }
    >
      <NeedHead
        slate={slateText(slate)}
        why={scene ? sceneNeedWords(day, scene.number) : ''}
        onWant={(is) => want(shown, is)}
      />
      <Found all={cast.length} shown={shown.length} typed={typed} onInput={setTyped} />
      <ul class="rows rows-two cast-rows">
        {shown.map((answer) => (
          <li key={answer.voice.id}>
            <NeedRow
              answer={answer}
              wanted={isWanted(answer)}
              onTap={() => want([answer], !isWanted(answer))}
            />
          </li>
        ))}
      </ul>
    </Page>
  );
}

interface NeedHeadProps {
  readonly slate: string;
  /** What the list of scenes says: `'scene 46: 1, 2, 5'`. */
  readonly why: string;
  readonly onWant: (is: boolean) => void;
}

function NeedHead({ slate, why, onWant }: NeedHeadProps) {
  const heading = useFocus<HTMLHeadingElement>(true);
  return (
    <div class="cast-head">
      <h1 ref={heading} tabIndex={-1}>
        Who is needed in {slate}?{why !== '' && <span class="need-why soft">{why}</span>}
      </h1>
      <div class="cast-all">
        <Button look="plain" onClick={() => onWant(true)}>
          all
        </Button>
        <Button look="plain" onClick={() => onWant(false)}>
          none
        </Button>
      </div>
    </div>
  );
}

interface NeedRowProps {
  readonly answer: VoiceAnswer;
  readonly wanted: boolean;
  readonly onTap: () => void;
}

function NeedRow({ answer, wanted, onTap }: NeedRowProps) {
  const day = useDay().day.value;
  const idle =
    answer.need === null ? '' : wordIn(NEED_WORD, answer.need === 'needed' ? 'resting' : answer.need);
  const { state } = answer;
  const under =
    state === 'off' || state === 'unrecorded' ? chainWords(day.rig, answer) : stateWords(day, answer);
  return (
    <Button look="bare" class="row need-row" pressed={wanted} onClick={onTap}>
      <span class="row-lead">
        <span class="row-number">{answer.voice.number}</span>
        <Tick on={wanted} />
      </span>
      <span class="row-text">
        <strong>
          <VoiceName answer={answer} />
        </strong>
        <span class="soft">{under}</span>
      </span>
      <span class="row-word">{wanted ? <b class="need-word">needed</b> : idle}</span>
    </Button>
  );
}

const Tick = ({ on }: { on: boolean }) => (
  <svg class="mark" width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
    <path d="M2 2h18v18H2z" fill="none" stroke="currentColor" stroke-width="1.6" />
    {on && <path d="M5 11l4 5 8-10" fill="none" stroke="currentColor" stroke-width="3" />}
  </svg>
);

interface NeedFootProps {
  readonly needed: readonly VoiceAnswer[];
  readonly changed: boolean;
  readonly onUndo: () => void;
  readonly onDone: () => void;
}

function NeedFoot({ needed, changed, onUndo, onDone }: NeedFootProps) {
  const lost = needed.filter((answer) => !isHeard(answer)).length;
  return (
    <div class="cast-foot">
      <Button onClick={onUndo}>{changed ? 'Cancel' : 'Back'}</Button>
      <Button look="solid" class="cast-main" onClick={onDone}>
        Done: {needed.length || 'nobody'} needed
        {lost > 0 && <span class="cast-lost">{lost} not recorded</span>}
      </Button>
    </div>
  );
}
