import { useState } from 'preact/hooks';
import { castInScene, describeScene, goToScene, markScene, moveScene } from '../../../app/commands/scenes.ts';
import type { SceneFit } from '../../../app/scene-fits.ts';
import { castInOrder } from '../../../day/cast-in-order.ts';
import { castOf, notInCast } from '../../../day/cast-of-scene.ts';
import type { Scene, SceneId } from '../../../day/scene.ts';
import { useDay, useRun } from '../../frame/context.ts';
import { Button } from '../../kit/button.tsx';
import { Choice } from '../../kit/field.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { Toggles } from '../../kit/toggles.tsx';
import { nameOf } from '../../words/chain.ts';
import { countsWords, fitSentences } from './fit-words.ts';
import { SceneForm } from './scene-form.tsx';

const STATES = [
  { value: 'to-shoot', name: 'to shoot' },
  { value: 'done', name: 'done' },
  { value: 'moved', name: 'moved to another day' },
] as const;
type State = (typeof STATES)[number]['value'];

interface SceneSheetProps {
  readonly id: SceneId;
  /** How it fits the rig, once that is worked out. */
  readonly fit: SceneFit | undefined;
  readonly onClose: () => void;
}

/** One scene: go to it, say whether it is done, who is in it, and when it comes. */
export function SceneSheet({ id, fit, onClose }: SceneSheetProps) {
  const day = useDay().day.value;
  const run = useRun();
  const [editing, setEditing] = useState(false);
  const scene = day.scenes.get(id);
  if (!scene || scene.struck) return null;
  const name = `Scene ${scene.number}`;
  const mark = (state: State): void => {
    const word = STATES.find(({ value }) => value === state)!.name;
    if (run(markScene(id, state), `${name} ${word}`)) onClose();
  };
  return (
    <Sheet
      title={name}
      under={[scene.intExt, scene.set, scene.dayNight].filter(Boolean).join(' ')}
      onClose={onClose}
      foot={
        <Button
          look="solid"
          class="cast-add"
          onClick={() => {
            if (run(goToScene(id), `Slate in scene ${scene.number}`)) onClose();
          }}
        >
          Go to this scene
        </Button>
      }
    >
      {fit && (
        <div class="section">
          <p class="soft">Needs {countsWords(fit)}</p>
          {fitSentences(day, fit).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      )}
      {scene.synopsis !== '' && <p class="section soft">{scene.synopsis}</p>}
      <div class="section">
        <Choice label="This scene is" value={scene.state as State} options={STATES} onChoose={mark} />
        <div class="buttons">
          <Button onClick={() => run(moveScene(id, -1), `${name} earlier`)}>Earlier</Button>
          <Button onClick={() => run(moveScene(id, 1), `${name} later`)}>Later</Button>
          <Button expanded={editing} onClick={() => setEditing(!editing)}>
            Edit
          </Button>
        </div>
      </div>
      {editing && <SceneForm scene={scene} onDone={() => setEditing(false)} />}
      <InIt scene={scene} />
      <div class="section buttons">
        <Button
          onClick={() => {
            if (run(describeScene(id, { struck: true }), `${name} removed`)) onClose();
          }}
        >
          Remove from the list
        </Button>
      </div>
    </Sheet>
  );
}

/** Everybody in the cast as a button: one tap in, one tap out. */
function InIt({ scene }: { scene: Scene }) {
  const day = useDay().day.value;
  const run = useRun();
  const on = castOf(day, scene).map(({ id }) => id);
  const unknown = notInCast(day, scene);
  const change = (now: string[]): void => {
    const voice = now.find((one) => !on.includes(one)) ?? on.find((one) => !now.includes(one));
    if (voice === undefined) return;
    const isIn = now.includes(voice);
    run(
      castInScene(scene.id, voice, isIn),
      `${nameOf(day, voice)} ${isIn ? 'in' : 'not in'} scene ${scene.number}`,
    );
  };
  return (
    <div class="section">
      <Toggles
        label="Who is in it"
        options={castInOrder(day).map(({ id, number }) => ({
          id,
          name: [number, nameOf(day, id)].filter(Boolean).join(' '),
        }))}
        on={on}
        onChange={change}
        named
        none="Nobody in the cast yet."
      />
      {unknown.length > 0 && <p class="soft">On the sheet, not in the cast: {unknown.join(', ')}</p>}
    </div>
  );
}
