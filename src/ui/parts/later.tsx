import { type ComponentType, type FunctionComponent, h } from 'preact';
import { useEffect, useState } from 'preact/hooks';

export type Later<Props> = FunctionComponent<Props> & {
  /** Loads it now, so that showing it later does not wait. */
  warm(): Promise<void>;
};

const all: Later<never>[] = [];

/**
 * A screen or sheet that is not in the first load. Once loaded it is shown without a wait; until then nothing is. Where it
 * cannot be loaded `Missing` is shown in its place; a sheet has none, and the screen under it stays in use.
 */
export function later<Props extends object>(
  load: () => Promise<ComponentType<Props>>,
  Missing?: ComponentType,
): Later<Props> {
  let loaded: ComponentType<Props> | undefined;
  const warm = async (): Promise<void> => {
    loaded ??= await load();
  };
  function Part(props: Props) {
    const shown = loaded;
    const [state, setState] = useState<'waiting' | 'there' | 'missing'>('waiting');
    useEffect(() => {
      // It may have come since this was drawn, and would then never be shown.
      if (shown) return;
      warm().then(
        () => setState('there'),
        () => setState('missing'),
      );
    }, []);
    if (shown) return h(shown, props);
    return state === 'missing' && Missing ? h(Missing, null) : null;
  }
  const part: Later<Props> = Object.assign(Part, { warm });
  all.push(part as Later<never>);
  return part;
}

/** Loads every part while nothing else is to be done. */
export async function warmAll(): Promise<void> {
  for (const part of all) await part.warm();
}
