import type { SceneFit } from '../../../app/scene-fits.ts';
import { castOf, notInCast } from '../../../day/cast-of-scene.ts';
import type { Scene } from '../../../day/scene.ts';
import { useDay } from '../../frame/context.ts';
import { Row } from '../../kit/row.tsx';
import { numbersOf, pagesWords, stateOfScene } from '../../words/scenes.ts';
import { fitWord } from './fit-words.ts';

interface SceneRowProps {
  readonly scene: Scene;
  /** The slate is in this scene. */
  readonly isCurrent: boolean;
  /** How it fits the rig, once that is worked out. */
  readonly fit: SceneFit | undefined;
  readonly onTap: () => void;
}

/** A scene on the list: where, when, how long, and who. */
export function SceneRow({ scene, isCurrent, fit, onTap }: SceneRowProps) {
  const day = useDay().day.value;
  const { number, intExt, set, dayNight, pages, crowd } = scene;
  const cast = numbersOf(day, castOf(day, scene));
  const unknown = notInCast(day, scene);
  const under = [
    dayNight,
    pagesWords(pages),
    cast ? `cast ${cast}` : 'nobody in it yet',
    unknown.length > 0 && `not in the cast: ${unknown.join(', ')}`,
    crowd,
  ];
  return (
    <Row
      number={number}
      title={[intExt, set].filter(Boolean).join(' ') || `Scene ${number}`}
      under={under.filter(Boolean).join(' · ')}
      word={
        <>
          {isCurrent && <strong>now</strong>}
          {fit && fit.leftOut.length > 0 ? <strong>{fitWord(fit)}</strong> : fit && fitWord(fit)}
          {stateOfScene(scene)}
        </>
      }
      onTap={onTap}
    />
  );
}
