import { useState } from 'preact/hooks';
import type { DayImport, Stands } from '../../app/import/import-days.ts';
import type { FileRead, Imported } from '../../app/import-files.ts';
import { useApp } from '../frame/context.ts';
import { complain, tell } from '../frame/messages.ts';
import { goTo } from '../frame/route.ts';
import { Row } from '../kit/row.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { countOf } from '../words/chain.ts';
import { titleOf } from '../words/day-outline.ts';
import { ChooseFile } from './choose-file.tsx';
import { ImportPreview } from './import-preview.tsx';
import { damageWords, importedWords } from './imported-words.ts';

interface ImportProps {
  /** Files from outside the app, so there is nothing to choose. */
  readonly brought?: DayImport;
  readonly onClose: () => void;
}

/**
 * The one way in for day files, whether chosen, pasted, shared or opened with the app: shows what would
 * change, then changes it on request.
 */
export function ImportSheet({ brought: given, onClose }: ImportProps) {
  const [brought, setBrought] = useState(given ?? null);
  const [done, setDone] = useState<Done | null>(null);

  const importAll = async (days: DayImport, stands?: Stands): Promise<void> => {
    const result = await days.importAll(stands);
    if (!result.ok) return complain(result.problem);
    const imported = result.value;
    const { reads } = days;
    const [day] = imported.days;
    if (reads.length > 1 || reads.some(({ damage }) => damage) || !day) return setDone({ reads, imported });
    tell(
      `${countOf(imported.fresh, 'new entry', 'new entries')}, ${imported.entries - imported.fresh} known`,
    );
    // Another phone's day: the way back to it is there.
    goTo({ at: 'day', day, tab: reads[0]?.file?.sender || reads[0]?.sealed ? 'phones' : 'now' });
  };
  if (done) return <ImportedSheet {...done} onClose={onClose} />;
  if (!brought) return <ChooseFile onBrought={setBrought} onClose={onClose} />;
  return <ImportPreview brought={brought} onImport={importAll} onClose={onClose} />;
}

interface Done {
  readonly reads: readonly FileRead[];
  readonly imported: Imported;
}

/** The result of importing several files, or a damaged one. */
function ImportedSheet({ reads, imported, onClose }: Done & { onClose: () => void }) {
  const { days } = useApp();
  return (
    <Sheet title="Imported" under={importedWords(reads, imported)} onClose={onClose}>
      <ul class="rows">
        {reads.map((one) => (
          <li key={one.name}>
            <Row mark={one.damage ? 'broken' : 'single'} title={one.name} under={damageWords(one)} />
          </li>
        ))}
        {days.value
          .filter(({ id }) => imported.days.includes(id))
          .map((day) => (
            <li key={day.id}>
              <Row
                title={titleOf(day)}
                under="imported"
                word="open"
                onTap={() => goTo({ at: 'day', day: day.id, tab: 'now' })}
              />
            </li>
          ))}
      </ul>
    </Sheet>
  );
}
