import { useEffect, useRef, useState } from 'preact/hooks';
import type { Problem } from '../../shared/result.ts';
import type { Found, SearchNews, SearchRequest } from './search.ts';

export type SearchState =
  | { readonly at: 'idle' }
  | { readonly at: 'running'; readonly share: number }
  | { readonly at: 'found'; readonly found: Found }
  | { readonly at: 'failed'; readonly problem: Problem };

export interface Search {
  readonly state: SearchState;
  /** Starts a search and cancels one that still runs. */
  readonly start: (request: SearchRequest) => void;
  readonly stop: () => void;
}

/** A search on its own worker, cancelled when the component goes away. */
export function useSearch(): Search {
  const [state, setState] = useState<SearchState>({ at: 'idle' });
  const worker = useRef<Worker | null>(null);
  const end = (): void => {
    worker.current?.terminate();
    worker.current = null;
  };
  useEffect(() => end, []);

  const start = (request: SearchRequest): void => {
    end();
    setState({ at: 'running', share: 0 });
    try {
      const made = new Worker(new URL('./search-worker.ts', import.meta.url), { type: 'module' });
      made.addEventListener('message', ({ data }: MessageEvent<SearchNews>) => {
        if ('share' in data) return setState({ at: 'running', share: data.share });
        end();
        setState(
          'found' in data ? { at: 'found', found: data.found } : { at: 'failed', problem: data.problem },
        );
      });
      made.addEventListener('error', () => {
        end();
        setState({ at: 'failed', problem: { code: 'search-failed' } });
      });
      worker.current = made;
      made.postMessage(request);
    } catch {
      setState({ at: 'failed', problem: { code: 'search-failed' } });
    }
  };
  const stop = (): void => {
    end();
    setState({ at: 'idle' });
  };
  return { state, start, stop };
}
