import { useState } from 'preact/hooks';
import { routeFor, sharable } from '../../app/sharing.ts';
import { reportMailto } from '../../report/formats/mailto.ts';
import { reportSubject } from '../../report/printed/report-name.ts';
import { device } from '../frame/sending/device.ts';
import { recipients, setWrap, type Whose, wrapSettings } from '../frame/sending/settings.ts';
import { Button } from '../kit/button.tsx';
import { TextField } from '../kit/field.tsx';
import { countOf, listOf } from '../words/chain.ts';
import { FormatChoice } from './format-choice.tsx';
import { SettingsSheet } from './settings-sheet.tsx';
import type { Outgoing } from './use-outgoing.ts';
import { useSend } from './use-send.ts';

/** What is sent, to whom, and the other ways to send it, in order. */
export function SendSection({ outgoing, whose }: { outgoing: Outgoing; whose: Whose }) {
  const [choosing, setChoosing] = useState(false);
  const { to } = wrapSettings(whose);
  return (
    <section class="section report-send" aria-labelledby="send-head">
      <h2 id="send-head">Send</h2>
      <FormatChoice whose={whose} />
      <FilesMade outgoing={outgoing} />
      <Button onClick={() => setChoosing(true)}>Paper, columns, signature</Button>
      <TextField
        label="To (remembered on this phone, and kept with what was sent)"
        value={to}
        onInput={(value) => setWrap(whose, { to: value })}
        type="email"
      />
      <OtherWays outgoing={outgoing} to={to} />
      {choosing && <SettingsSheet whose={whose} onClose={() => setChoosing(false)} />}
    </section>
  );
}

function FilesMade({ outgoing: { ready } }: { outgoing: Outgoing }) {
  if (!ready) return <p class="soft">The files are being made.</p>;
  const { files, missing, noPages } = ready;
  return (
    <>
      {noPages !== null && (
        <p class="warn">
          The pages could not be made ({noPages}). Open the app once with a signal; the other files can be
          sent now.
        </p>
      )}
      {missing.length > 0 && (
        <p class="warn">
          {countOf(missing.length, 'character')} cannot be drawn on the pages: the web page goes along.
        </p>
      )}
      <ul class="soft">
        {files.map(({ name }) => (
          <li key={name}>{name}</li>
        ))}
      </ul>
    </>
  );
}

/** Offered in order of what they lose: the files one by one, the files in a draft, the text alone. */
function OtherWays({ outgoing, to }: { outgoing: Outgoing; to: string }) {
  const send = useSend(outgoing);
  const { report, made, ready } = outgoing;
  const files = ready?.files ?? [];
  const route = routeFor(device, files);
  const unshared = files.length - sharable(device, files).length;
  const { leftOut, href } = reportMailto(report.model, recipients(to), reportSubject(report.model), {
    revision: report.revision,
    letter: report.letter,
    issued: made.issued,
    signature: made.signature,
  });
  return (
    <>
      <p class="soft">Other ways</p>
      {route === 'share' && unshared > 0 && (
        <p class="warn">
          {countOf(unshared, 'file')} of a kind that sharing does not take on this phone: download the files.
        </p>
      )}
      <div class="buttons">
        {route === 'share' && device.canDownload && (
          <Button disabled={files.length === 0} onClick={send.download}>
            Download the files
          </Button>
        )}
        {(route === 'download' || (leftOut.parts.length > 0 && device.canDownload)) && (
          <Button disabled={files.length === 0} onClick={send.draft}>
            Email draft with files
          </Button>
        )}
        <a class="button as-button" href={href} onClick={send.mailed}>
          Email the text
        </a>
        <Button onClick={send.copy}>Copy the text</Button>
      </div>
      {leftOut.parts.length > 0 && <p class="soft">{leftOutWords(leftOut)}</p>}
    </>
  );
}

const PART_WORDS = {
  head: 'the head',
  layout: 'the track layout',
  open: 'what is not settled',
  takes: 'takes',
  totals: 'the totals',
  changes: 'what changed',
  signature: 'the signature',
} as const;

function leftOutWords({ parts, takes }: ReturnType<typeof reportMailto>['leftOut']): string {
  const out = parts.map((part) => (part === 'takes' ? countOf(takes.length, 'take') : PART_WORDS[part]));
  return `An email link has room for about a page: this one leaves out ${listOf(out)}, and says so. ${device.canDownload ? 'The email draft has everything, with the files.' : 'To send everything, share the files.'}`;
}
