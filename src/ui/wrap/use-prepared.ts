import { useEffect, useState } from 'preact/hooks';
import type { Day } from '../../day/model.ts';
import { type Prepared, prepareReport } from './prepare.ts';
import type { WrapSettings } from './settings.ts';

/** A pause in typing or tapping before the files are made anew. */
const SETTLE_MS = 150;

/**
 * The report with its files, made before anybody taps Send: the share sheet opens only straight from a tap. Undefined
 * while it is being made; a text when it could not be.
 */
export function usePrepared(
  day: Day,
  settings: WrapSettings,
  matters: readonly string[],
): Prepared | string | undefined {
  const [prepared, setPrepared] = useState<Prepared | string | undefined>(undefined);
  const { formats, paper, lines, columns, signature } = settings;
  useEffect(() => {
    let wanted = true;
    const timer = setTimeout(() => {
      const made = { paper, lines, columns: [...columns[lines]], signature, matters: [...matters] };
      prepareReport(day, made, formats).then(
        (report) => {
          if (wanted) setPrepared(report);
        },
        (error: unknown) => {
          if (wanted) setPrepared(error instanceof Error ? error.message : String(error));
        },
      );
    }, SETTLE_MS);
    return () => {
      wanted = false;
      clearTimeout(timer);
    };
  }, [day, formats, paper, lines, columns, signature, matters]);
  return prepared;
}
