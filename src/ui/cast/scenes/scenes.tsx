import { useState } from 'preact/hooks';
import { goToScene, slateOfScene } from '../../../app/commands/scenes.ts';
import type { SceneFit } from '../../../app/scene-fits.ts';
import type { Day } from '../../../day/model.ts';
import type { Scene, SceneId } from '../../../day/scene.ts';
import { sceneAfter, sceneOfSlate, scenesInOrder } from '../../../day/scenes-in-order.ts';
import { slateText } from '../../../day/slate.ts';
import { currentSlate } from '../../../day/takes.ts';
import { useDatabase, useDay, useRun } from '../../frame/context.ts';
import { Page } from '../../frame/page/page.tsx';
import { hrefOf } from '../../frame/route.ts';
import { Button } from '../../kit/button.tsx';
import { countOf, listOf } from '../../words/chain.ts';
import { CallSheetImport } from '../call-sheet/open-call-sheet.ts';
import { AddScene } from './add-scene.tsx';
import { SceneRow } from './scene-row.tsx';
import { SceneSheet } from './scene-sheet.tsx';
import { useSceneFits } from './use-scene-fits.ts';
import '../cast.css';

type Open = { readonly scene: SceneId } | 'add' | 'sheet' | null;

/** The scenes of the day in the order to shoot. */
export function Scenes() {
  const day = useDay().day.value;
  const [open, setOpen] = useState<Open>(null);
  const scenes = scenesInOrder(day);
  const current = sceneOfSlate(day, currentSlate(day, useDatabase()));
  const next = sceneAfter(day, current);
  const fits = useSceneFits(day);
  const close = (): void => setOpen(null);
  return (
    <Page tab="scenes" foot={<Foot day={day} next={next} onOpen={setOpen} />}>
      <ScenesHead day={day} scenes={scenes} fits={fits} />
      <ol class="rows cast-rows" aria-label="Scenes in the order to shoot">
        {scenes.map((scene) => (
          <li key={scene.id}>
            <SceneRow
              scene={scene}
              isCurrent={scene === current}
              fit={fits.get(scene.id)}
              onTap={() => setOpen({ scene: scene.id })}
            />
          </li>
        ))}
      </ol>
      {open === 'add' && <AddScene onClose={close} />}
      {open === 'sheet' && <CallSheetImport onClose={close} />}
      {open !== null && typeof open === 'object' && (
        <SceneSheet id={open.scene} fit={fits.get(open.scene)} onClose={close} />
      )}
    </Page>
  );
}

interface ScenesHeadProps {
  readonly day: Day;
  readonly scenes: readonly Scene[];
  readonly fits: ReadonlyMap<SceneId, SceneFit>;
}

function ScenesHead({ day, scenes, fits }: ScenesHeadProps) {
  const short = scenes.filter(({ id }) => (fits.get(id)?.leftOut.length ?? 0) > 0);
  const done = scenes.filter(({ state }) => state === 'done').length;
  const moved = scenes.filter(({ state }) => state === 'moved').length;
  return (
    <div class="cast-head">
      <h1 class="unseen">Scenes</h1>
      {scenes.length === 0 ? (
        <p class="scenes-none">
          <strong>No scenes yet.</strong> Paste the call sheet, and who is needed follows the slate.
        </p>
      ) : (
        <p class="soft">
          <b>{countOf(scenes.length, 'scene')}</b>
          {done > 0 && ` · ${done} done`}
          {moved > 0 && ` · ${moved} moved`}
          {short.length > 0 && (
            <>
              {' '}
              ·{' '}
              <b class="warn">
                {listOf(short.map(({ number }) => number))} {short.length > 1 ? 'do' : 'does'} not fit
              </b>
            </>
          )}
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
