import { fail, ok, type Result } from '../../shared/result.ts';
import { cleanLine } from '../clean-text.ts';
import {
  base64Lines,
  encodedWords,
  fileNameParameters,
  headerField,
  quotedPrintable,
} from './mail-encoding.ts';

export interface MailFile {
  readonly name: string;
  /** `'application/pdf'`, `'text/csv'`. Text parts are marked as UTF-8. */
  readonly type: string;
  readonly bytes: Uint8Array;
}

export interface MailDraft {
  /** Left to the mail program if missing. */
  readonly from?: string | undefined;
  readonly to: readonly string[];
  readonly subject: string;
  readonly text: string;
  readonly files: readonly MailFile[];
  /** UTC ms, and minutes east of UTC. */
  readonly at: number;
  readonly zone: number;
}

export type MailProblem = { readonly code: 'mail-address-not-read'; readonly address: string };

/** Encoded text cannot contain `=_` or this line, so no part can end another. */
const BOUNDARY = '=_rollbook_report_=';

/**
 * A message with its files (RFC 5322, RFC 2045, RFC 2046), all ASCII, lines ending in CR LF, that desktop
 * mail programs open as a draft (`X-Unsent: 1`). Fails with `mail-address-not-read` rather than leave an
 * address out.
 */
export function mailDraft(draft: MailDraft): Result<string, MailProblem> {
  const addresses = [...draft.to, draft.from ?? ''].map((address) => address.trim()).filter(Boolean);
  const bad = addresses.find((address) => !isAddress(address));
  if (bad !== undefined) return fail({ code: 'mail-address-not-read', address: bad });
  return ok(
    [
      headerField('Date', [mailDate(draft.at, draft.zone)]),
      draft.from?.trim() ? headerField('From', [draft.from.trim()]) : '',
      draft.to.length > 0 ? headerField('To', addressWords(draft.to)) : '',
      headerField('Subject', encodedWords(cleanLine(draft.subject))),
      headerField('X-Unsent', ['1']),
      headerField('MIME-Version', ['1.0']),
      headerField('Content-Type', ['multipart/mixed;', `boundary="${BOUNDARY}"`]),
      '\r\n',
      textPart(draft.text),
      ...draft.files.map(filePart),
      `--${BOUNDARY}--\r\n`,
    ].join(''),
  );
}

/** Plain addresses in visible ASCII only; no names, groups or comments (RFC 5322 section 3.4.1). */
const isAddress = (text: string): boolean =>
  /^[A-Za-z0-9.!#$%&'*+/=?^_`{|}~-]{1,64}@[A-Za-z0-9-]+(\.[A-Za-z0-9-]+)*$/.test(text) && text.length <= 254;

const addressWords = (to: readonly string[]): string[] =>
  to
    .map((address) => address.trim())
    .filter(Boolean)
    .map((address, at, all) => (at < all.length - 1 ? `${address},` : address));

function textPart(text: string): string {
  return [
    `--${BOUNDARY}\r\n`,
    headerField('Content-Type', ['text/plain;', 'charset=utf-8']),
    headerField('Content-Transfer-Encoding', ['quoted-printable']),
    `\r\n${quotedPrintable(text)}\r\n`,
  ].join('');
}

function filePart({ name, type, bytes }: MailFile): string {
  const parameters = fileNameParameters(cleanLine(name));
  const last = parameters.length - 1;
  return [
    `--${BOUNDARY}\r\n`,
    headerField('Content-Type', typeWords(cleanLine(type))),
    headerField('Content-Transfer-Encoding', ['base64']),
    headerField('Content-Disposition', [
      'attachment;',
      ...parameters.map((parameter, at) => (at < last ? `${parameter};` : parameter)),
    ]),
    `\r\n${base64Lines(bytes)}`,
  ].join('');
}

/** Text without a charset would be read as US-ASCII (RFC 2046 section 4.1.2). */
const typeWords = (type: string): string[] =>
  /^text\//i.test(type) && !/;\s*charset=/i.test(type) ? [`${type};`, 'charset=utf-8'] : [type];

const DAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** `mailDate(1791391500000, 120)` is `'Wed, 07 Oct 2026 18:45:00 +0200'` (RFC 5322 section 3.3). */
export function mailDate(at: number, zone: number): string {
  const local = new Date(at + zone * 60_000);
  const two = (value: number) => String(value).padStart(2, '0');
  const day = `${DAYS[local.getUTCDay()]}, ${two(local.getUTCDate())} ${MONTHS[local.getUTCMonth()]}`;
  const time = [local.getUTCHours(), local.getUTCMinutes(), local.getUTCSeconds()].map(two).join(':');
  const east = Math.abs(zone);
  const offset = `${zone < 0 ? '-' : '+'}${two(Math.floor(east / 60))}${two(east % 60)}`;
  return `${day} ${local.getUTCFullYear()} ${time} ${offset}`;
}
