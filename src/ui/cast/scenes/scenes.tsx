import { useState } from 'preact/hooks';
import { goToScene, slateOfScene } from '../../../app/commands/scenes.ts';
import type { Day } from '../../../day/model.ts';
import type { Scene, SceneId } from '../../../day/scene.ts';
import { sceneOfSlate, scenesInOrder, scenesToShoot } from '../../../day/scenes-in-order.ts';
import { slateText } from '../../../day/slate.ts';
import { currentSlate } from '../../../day/takes.ts';
import { useDatabase, useDay, useRun } from '../../frame/context.ts';
import { Page } from '../../frame/page/page.tsx';
import { hrefOf } from '../../frame/route.ts';
import { Button } from '../../kit/button.tsx';
import { countOf } from '../../words/chain.ts';
import { CallSheetImport } from '../call-sheet/open-call-sheet.ts';
import { AddScene } from './add-scene.tsx';
import { SceneRow } from './scene-row.tsx';
import { SceneSheet } from './scene-sheet.tsx';
import '../cast.css';

type Open = { readonly scene: SceneId } | 'add' | 'sheet' | null;

/** The scenes of the day in the order to shoot. */
export function Scenes() {
  const day = useDay().day.value;
  const [open, setOpen] = useState<Open>(null);
  const scenes = scenesInOrder(day);
  const current = sceneOfSlate(day, currentSlate(day, useDatabase()));
  const next = nextScene(day, current);
  const close = (): void => setOpen(null);
  return (
    <Page tab="scenes" foot={<Foot day={day} next={next} onOpen={setOpen} />}>
      <ScenesHead day={day} scenes={scenes} />
      <ol class="rows cast-rows" aria-label="Scenes in the order to shoot">
        {scenes.map((scene) => (
          <li key={scene.id}>
            <SceneRow
              scene={scene}
              isCurrent={scene === current}
              onTap={() => setOpen({ scene: scene.id })}
            />
          </li>
        ))}
      </ol>
      {open === 'add' && <AddScene onClose={close} />}
      {open === 'sheet' && <CallSheetImport onClose={close} />}
      {open !== null && typeof open === 'object' && <SceneSheet id={open.scene} onClose={close} />}
    </Page>
  );
}

/** The next one to shoot after the scene that the slate is in; the first, if that is not on the list. */
export function nextScene(day: Day, current: Scene | undefined): Scene | undefined {
  const toShoot = scenesToShoot(day).filter((scene) => scene !== current);
  return toShoot.find(({ order }) => current === undefined || order > current.order) ?? toShoot[0];
}

function ScenesHead({ day, scenes }: { day: Day; scenes: readonly Scene[] }) {
  const done = scenes.filter(({ state }) => state === 'done').length;
  const moved = scenes.filter(({ state }) => state === 'moved').length;
  return (
    <div class="cast-head">
      <h1 class="unseen">Scenes</h1>
      {scenes.length === 0 ? (
        <p>
          <strong>No scenes yet.</strong> Paste the call sheet, and who is needed follows the slate.
        </p>
      ) : (
        <p class="soft">
          <b>{countOf(scenes.length, 'scene')}</b>
          {done > 0 && ` · ${done} done`}
          {moved > 0 && ` · ${moved} moved`}
        </p>
      )}
      <a class="button-plain as-button" href={hrefOf({ at: 'day', day: day.id, tab: 'cast' })}>
        cast
      </a>
    </div>
  );
}

interface FootProps {
  readonly day: Day;
  readonly next: Scene | undefined;
  readonly onOpen: (open: Open) => void;
}

function Foot({ day, next, onOpen }: FootProps) {
  const run = useRun();
  const slate = next && slateText(slateOfScene(day, next));
  return (
    <div class="cast-foot">
      <Button onClick={() => onOpen('add')}>Add</Button>
      <Button look={next ? 'outline' : 'solid'} onClick={() => onOpen('sheet')}>
        Call sheet
      </Button>
      {next && (
        <Button look="solid" class="cast-main" onClick={() => run(goToScene(next.id), `Slate ${slate}`)}>
          Go to scene {next.number}
        </Button>
      )}
    </div>
  );
}
