import { type ComponentType, type FunctionComponent, h } from 'preact';
import { useEffect, useState } from 'preact/hooks';

export type Lazy<Props> = FunctionComponent<Props> & {
  /** Loads it now, so that showing it does not wait. */
  preload(): Promise<void>;
};

const all: Lazy<never>[] = [];

/**
 * A screen or sheet outside the first load. Until loaded it shows nothing; after that it shows without a
 * wait. If it cannot be loaded, `Missing` is shown in its place; a sheet has none, and the screen under it
 * stays usable.
 */
export function lazy<Props extends object>(
  load: () => Promise<ComponentType<Props>>,
  Missing?: ComponentType,
): Lazy<Props> {
  let loaded: ComponentType<Props> | undefined;
  const preload = async (): Promise<void> => {
    loaded ??= await load();
  };
  function Part(props: Props) {
    const shown = loaded;
    const [state, setState] = useState<'waiting' | 'there' | 'missing'>('waiting');
    useEffect(() => {
      // It may have loaded since this was rendered, and would then never show.
      if (shown) return;
      preload().then(
        () => setState('there'),
        () => setState('missing'),
      );
    }, []);
    if (shown) return h(shown, props);
    return state === 'missing' && Missing ? h(Missing, null) : null;
  }
  const part: Lazy<Props> = Object.assign(Part, { preload });
  all.push(part as Lazy<never>);
  return part;
}

/** Loads all parts while the app is idle. */
export async function preloadAll(): Promise<void> {
  for (const part of all) await part.preload();
}
