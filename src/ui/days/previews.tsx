import type { FileRead, SealedRead } from '../../app/import-files.ts';
import type { Preview } from '../../app/preview.ts';
import { useApp } from '../frame/context.ts';
import { Row } from '../kit/row.tsx';
import { listOf } from '../words/chain.ts';
import { titleOf } from '../words/day-outline.ts';
import { sentenceFor } from '../words/problems.ts';
import { sealedLines } from '../words/sealed.ts';
import { damageWords } from './imported-words.ts';
import { disputeWords, previewLines } from './preview-words.ts';

interface PreviewsProps {
  readonly reads: readonly FileRead[];
  readonly previews: readonly Preview[];
}

/** Each file that is not simply intact, and what each day would become. */
export function Previews({ reads, previews }: PreviewsProps) {
  const files = reads.length > 1 || reads.some(({ damage }) => damage);
  return (
    <>
      {files && (
        <ul class="rows">
          {reads.map((one) => (
            <li key={one.name}>
              <Row mark={one.damage ? 'broken' : 'single'} title={one.name} under={damageWords(one)} />
            </li>
          ))}
        </ul>
      )}
      {previews.map((preview) => (
        <OneDay
          key={preview.day}
          preview={preview}
          senders={sendersOf(reads, preview.day)}
          sealed={reads.flatMap(({ file, sealed }) => (file?.day === preview.day && sealed) || [])}
        />
      ))}
    </>
  );
}

/** Who sent the files of a day, each once. */
const sendersOf = (reads: readonly FileRead[], day: string): string[] => [
  ...new Set(reads.flatMap(({ file }) => (file?.day === day && file.sender) || [])),
];

interface OneDayProps {
  readonly preview: Preview;
  readonly senders: readonly string[];
  readonly sealed: readonly SealedRead[];
}

/** The day's name, who sent it, whether this phone has it, and what would change. */
function OneDay({ preview, senders, sealed }: OneDayProps) {
  const { after, isNew, disputes, refused, fresh, mended } = preview;
  const known = useApp().days.value.find(({ id }) => id === preview.day);
  const comes = fresh + mended > 0 || refused.length === 0;
  return (
    <section class="section preview">
      <h3>{titleOf(known ?? after.header)}</h3>
      <p class="soft">
        {[
          senders.length > 0 ? `sent by ${listOf(senders)}` : '',
          after.header.date,
          isNew ? 'not on this phone yet' : 'on this phone already',
        ]
          .filter(Boolean)
          .join(' · ')}
      </p>
      {disputes.length > 0 && (
        <>
          <p class="warn">
            {disputes.length === 1
              ? 'One entry differs here and in the file. One of the two is damaged:'
              : `${disputes.length} entries differ here and in the file. One side is damaged:`}
          </p>
          <ul>
            {disputes.map((dispute) => (
              <li key={dispute.here.id}>{disputeWords(after, dispute)}</li>
            ))}
          </ul>
        </>
      )}
      {comes && (
        <ul>
          {[...previewLines(preview), ...sealed.flatMap(sealedLines)].map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      {refused.map(({ name, problem }) => (
        <p key={name} class="warn">
          {name}: {sentenceFor(problem)}
        </p>
      ))}
    </section>
  );
}
