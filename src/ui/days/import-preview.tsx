import { useEffect, useState } from 'preact/hooks';
import type { DayImport, Stands } from '../../app/import/import-days.ts';
import type { Preview } from '../../app/preview.ts';
import { hrefOf } from '../frame/route.ts';
import { Button } from '../kit/button.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { Previews } from './previews.tsx';
import './days.css';

const UNDER: Record<DayImport['how'], string> = {
  chosen: 'Nothing has changed yet.',
  pasted: 'Nothing has changed yet.',
  shared: 'Shared by another app or a web page; the phone does not say which. Nothing has changed yet.',
  opened: 'Opened with this app. Nothing has changed yet.',
  read: 'Read off the other phone. Nothing has changed yet.',
};

interface ImportPreviewProps {
  readonly brought: DayImport;
  readonly onImport: (days: DayImport, stands?: Stands) => Promise<void>;
  readonly onClose: () => void;
}

/** Before an import: which day it is, what is new, what would change, and the button that does it. */
export function ImportPreview({ brought, onImport, onClose }: ImportPreviewProps) {
  const { reads, how, discard } = brought;
  const [previews, setPreviews] = useState<readonly Preview[] | null>(null);
  useEffect(() => {
    void brought.preview().then(setPreviews);
  }, [brought]);
  const isIdle = previews?.every(({ fresh, mended, disputes }) => fresh + mended + disputes.length === 0);
  const isDamaged = reads.some(({ damage }) => damage);
  const wording = isDamaged
    ? 'Import what can be read'
    : how === 'pasted'
      ? 'Import what was pasted'
      : 'Import';
  return (
    <Sheet
      title={
        !isDamaged ? 'Import this?' : reads.length === 1 ? 'The file is damaged' : 'Some files are damaged'
      }
      under={UNDER[how]}
      onClose={onClose}
      foot={
        <div class="import-foot">
          <Answers
            previews={previews}
            wording={wording}
            onImport={(stands) => void onImport(brought, stands)}
          />
          {!isIdle && <Button onClick={onClose}>Not now</Button>}
        </div>
      }
    >
      {previews ? (
        <Previews reads={reads} previews={previews} />
      ) : (
        <p class="section soft" aria-busy="true">
          Working out what would change…
        </p>
      )}
      {discard && (
        <div class="section">
          <Button look="plain" onClick={() => void discard().then(onClose)}>
            Discard what was shared
          </Button>
        </div>
      )}
    </Sheet>
  );
}

interface AnswersProps {
  readonly previews: readonly Preview[] | null;
  readonly wording: string;
  readonly onImport: (stands?: Stands) => void;
}

/** The import button; if entries are disputed, the choice of which to keep goes with it. */
function Answers({ previews, wording, onImport }: AnswersProps) {
  const days = previews ?? [];
  const comes = days.some(({ fresh, mended }) => fresh + mended > 0);
  const [known] = days.filter(({ refused }) => refused.length === 0);
  if (days.some(({ disputes }) => disputes.length > 0))
    return (
      <>
        <Button look="solid" onClick={() => onImport('here')}>
          {comes ? 'Import, keep what is here' : 'Keep what is here'}
        </Button>
        <Button onClick={() => onImport('file')}>Import, with what the file says</Button>
      </>
    );
  if (previews && !comes)
    return known ? (
      <a class="button button-solid as-button" href={hrefOf({ at: 'day', day: known.day, tab: 'now' })}>
        Open the day
      </a>
    ) : null;
  return (
    <Button look="solid" disabled={!previews} onClick={() => onImport()}>
      {wording}
    </Button>
  );
}
